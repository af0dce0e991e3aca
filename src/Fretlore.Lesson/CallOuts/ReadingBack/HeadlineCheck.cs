using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>Proves a headline: read back from its words, it says of the notes exactly what is to be said of them.</summary>
/// <remarks>
/// <para>
/// Proven are: what is played most (one finger, pairs, which shapes, a ringing, legato or single-note line), on which strings, from which lowest to which highest fret, whether one open
/// string or several, the first three devices of <see cref="Device"/> that are there, bars, repeats and metre, and the value of all notes or of two in three. A headline that leaves one of
/// them out is as wrong as one that says another: riffs that differ in any of them never share a headline. Where the hand stands and what is hard are held to the hand plan.
/// </para>
/// <para>
/// "Same as ..., but" is proven by making the riff: the other riff's notes with the end that is told, or with the bars that change taken from this riff, must be this riff, and every bar
/// that is said to change must differ. "A variation on" is what the sheet says, and is only right where nothing closer can be said.
/// </para>
/// <para>Not in a headline, and so not proven by it: the order of the notes and every single fret. Those are the walk-through's.</para>
/// </remarks>
internal sealed class HeadlineCheck(Riff riff, CallOutContext context)
{
    private readonly StringWords strings = new(riff.Neck.Tuning, context.Style.Strings);

    /// <summary>What is not so, not understood or left out in a headline; null when it is the riff's.</summary>
    public string? Problem(Speech headline)
    {
        var read = HeadlineReader.Read(headline, strings);
        if (read.Problem is not null) return read.Problem;
        if (FeatureProblem(RiffFeatures.Of(riff), read.Features) is { } feature) return feature;
        if (read.IsNothing) return (read.Relation ?? read.HardPlace ?? read.Positions?.Words) is { } more ? $"not so of rests: '{more}'" : null;
        if (read.Features.Playing == Playing.Nothing) return "not said that there is nothing to play";
        if (RelationProblem(read.Relation) is { } relation) return relation;
        if (Positions is var positions && read.Positions != positions) return $"heard of the hand is '{read.Positions?.Words}', it is '{positions?.Words}'";
        return read.HardPlace == HardPlace ? null : $"heard to be minded is '{read.HardPlace}', it is '{HardPlace}'";
    }

    /// <summary>The sentences of a headline that are so, each by itself.</summary>
    public Speech Proven(Speech headline) => new([.. headline.Breaths.Where(sentence => Holds(HeadlineReader.Read(new Speech([sentence]), strings)))]);

    private bool Holds(ReadHeadline one)
    {
        var (said, written) = (one.Features, RiffFeatures.Of(riff));
        if (one.Problem is not null || (one.IsNothing && written.Playing != Playing.Nothing)) return false;
        if (one.Relation is not null) return RelationProblem(one.Relation) is null;
        if (one.Positions is not null) return one.Positions == Positions;
        if (one.HardPlace is not null) return one.HardPlace == HardPlace;
        if (said.Devices.Count > 0) return said.Devices == written.Devices;
        if (said.Playing != Playing.Nothing)
        {
            return (said.Playing, said.Strings, said.IsSpan, said.Shapes, said.Reach) == (written.Playing, written.Strings, written.IsSpan, written.Shapes, written.Reach);
        }
        return (said.Bars, said.HasPickup, said.BarsPlayed, said.Meter, said.MainValue) == (written.Bars, written.HasPickup, written.BarsPlayed, written.Meter, written.MainValue);
    }

    private HandPositions? Positions => context.Hands is { } hands ? HandPositions.Of(riff, hands) : null;

    private string? HardPlace => context.Hands is { } hands && HandWords.HardPlace(riff, hands) is { } place ? place + "." : null;

    private static string? FeatureProblem(RiffFeatures written, RiffFeatures heard)
    {
        foreach (var (what, was, now) in Pairs(written, heard))
        {
            if (!Equals(was, now)) return $"heard of the {what} is {now ?? "nothing"}, written is {was ?? "nothing"}";
        }
        return null;
    }

    private static IEnumerable<(string What, object? Was, object? Now)> Pairs(RiffFeatures written, RiffFeatures heard) =>
    [
        ("playing", written.Playing, heard.Playing), ("strings", written.Strings, heard.Strings), ("strings between", written.IsSpan, heard.IsSpan), ("shapes", written.Shapes, heard.Shapes),
        ("frets", written.Reach, heard.Reach), ("devices", written.Devices, heard.Devices), ("bars", written.Bars, heard.Bars), ("pickup", written.HasPickup, heard.HasPickup),
        ("repeats", written.BarsPlayed, heard.BarsPlayed), ("metre", written.Meter, heard.Meter), ("note values", written.MainValue, heard.MainValue),
    ];

    private string? RelationProblem(string? sentence)
    {
        var basis = context.BaseOf(riff);
        if (sentence is null) return basis is null ? null : $"not said that it varies {basis.Name}";
        if (basis is null) return $"not so of the riff: '{sentence}'";
        var row = new WordRow(sentence);
        var like = Likeness.Of(riff, basis);
        if (row.Take("variation on"))
        {
            var name = new WordRow(RiffTeller.RiffName(SpokenName.Of(basis.Name))).Rest;
            if (row.Rest != name) return $"not so of the riff: '{sentence}'";
            return like is { IsWhole: false } ? $"it is nearer to {basis.Name} than '{sentence}' says" : null;
        }
        return Rebuilt(sentence, basis) is { } made && made.Count == riff.Content.Count && like is not null && IsMade(made, basis, like, sentence) ? null : $"not so of the riff: '{sentence}'";
    }

    private ValueList<ValueList<ReadStrand>>? Rebuilt(string sentence, Riff basis)
    {
        var read = RiffReader.Read(new Speech([sentence]), strings, name => SpokenName.Of(basis.Name) == name ? basis : null, Detail.WalkThrough);
        return read.Problem is null && read.Repeats.SequenceEqual(RiffReader.Repeats(riff)) ? read.Bars : null;
    }

    // Bars told to change must differ, all others must be the other riff's; where the end is told, it must lead to this riff.
    private bool IsMade(ValueList<ValueList<ReadStrand>> made, Riff basis, Likeness like, string sentence)
    {
        var said = RiffReader.ChangedBars(sentence);
        if (said.Length > 0 || like.Changed.Count == 0) return like.Changed.SequenceEqual(said) && !sentence.Contains(" but end ", StringComparison.Ordinal);
        var last = riff.Content.Count - 1;
        return like.Changed.SequenceEqual([last]) && BarForm.Of(riff.Content[last]).Timing == BarForm.Of(basis.Content[last]).Timing
            && CallOutCheck.Difference(riff.Content[last], made[last], Detail.WalkThrough) is null;
    }
}
