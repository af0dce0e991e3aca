using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Hands.Retuning;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.Retuning;

/// <summary>How does a song go in another tuning?</summary>
/// <param name="To">The open strings as typed, low to high.</param>
/// <param name="Parts">The parts to retune as typed; null for all that are tuned as the song's first one is.</param>
/// <param name="Semitones">By how much the whole song is moved, -24 to 24.</param>
/// <param name="Capo">Where the capo goes as typed, see <see cref="CapoText"/>; null leaves it.</param>
/// <param name="Hand">The hand that plays it.</param>
public sealed partial record RetuneQuestion(string To, string? Parts = null, int Semitones = 0, string? Capo = null, HandSize Hand = HandSize.Average)
{
    private const int MostSemitones = 24;

    /// <param name="workspace">The sheet; there must be a song.</param>
    public Answer<RetuneAnswer> Ask(SongWorkspace workspace)
    {
        var song = workspace.Song ?? throw new InvalidOperationException("A sheet without a song can't be retuned.");
        if (Order(song) is var read && read.Misread is { } misread) return misread;
        var order = read.Value;
        var retuned = Retuner.Retune(song, order);
        var sheet = SheetWriter.Write(retuned.Song, new SheetStyle(FindsRiffs: false));
        var written = SongWorkspace.Open(new SourceText(sheet.Text, ""));
        var before = workspace.PlanHands(new PlayingHand(Hand));
        var after = written.Song is null ? null : written.PlanHands(new PlayingHand(Hand));
        var parts = song.Parts.Select((part, i) => new RetunedPart(
            part.Name, part.Title, retuned.Song.Parts[i].Neck, order.Parts.Contains(i),
            before.Plan.Parts[i].Whole.Difficulty, after is null ? before.Plan.Parts[i].Whole.Difficulty : after.Plan.Parts[i].Whole.Difficulty,
            [.. retuned.Parts[i].Select(loss => Line(loss, song.Bars))]));
        var riffs = retuned.Riffs.Select(riff => new RetunedRiff(
            riff.Riff, [.. riff.Losses.Select(loss => Line(loss, song.Riffs.First(r => r.Name == riff.Riff).Bars))]));
        // What no hand could do before is not the new tuning's fault.
        var wereThere = before.Findings.Select(finding => finding.Code).ToHashSet();
        var newFindings = after is null ? [] : after.Findings.Where(finding => !wereThere.Contains(finding.Code));
        return new RetuneAnswer(
            sheet.Text, order, [.. parts], [.. riffs], [.. RetuneOffers.Find(song, order, retuned)],
            [.. sheet.Remarks.Select(remark => remark.ToString()), .. Notes(workspace, song), .. CapoNotes(song, order)],
            [.. written.Findings.Where(finding => finding.Severity == Severity.Error), .. newFindings]);

        LossLine Line(RetuneLoss loss, ValueList<Bar> bars) => new(loss.Kind, bars[loss.Bar].Number, RetuneWords.Of(loss, workspace.Reading));
    }

    /// <summary>For example <c>3 semitones down</c>.</summary>
    public static string Words(int semitones) => RetuneWords.Semitones(semitones);

    private Answer<RetuneOrder> Order(Song song)
    {
        var tuning = SheetTuningText.Read(To);
        if (tuning.Misread is { } noTuning) return noTuning;
        var chosen = PartChoice.Read(Parts, song);
        if (chosen.Misread is { } noParts) return noParts;
        var typed = Semitones.ToString(CultureInfo.InvariantCulture);
        if (Math.Abs(Semitones) > MostSemitones)
        {
            return new Misread(typed, 1, typed.Length, "That is further than a song is moved.", string.Create(CultureInfo.InvariantCulture, $"Give semitones from -{MostSemitones} to {MostSemitones}."));
        }
        var parts = chosen.Value.Count > 0 ? chosen.Value : SameAsFirst(song);
        if (Capo is null) return new RetuneOrder(tuning.Value, parts, Semitones, null, Hand);
        var capo = CapoText.Read(Capo, tuning.Value.StringCount, parts.Select(part => song.Parts[part].Neck.FretCount).Min());
        return capo.Misread is { } noCapo ? noCapo : new RetuneOrder(tuning.Value, parts, Semitones, capo.Value, Hand);
    }

    private static ValueList<int> SameAsFirst(Song song) => Enumerable.Range(0, song.Parts.Count)
        .Where(part => song.Parts[part].Neck.Tuning == song.Parts[0].Neck.Tuning).ToValueList();

    private static IEnumerable<string> Notes(SongWorkspace workspace, Song song)
    {
        if (Comment().IsMatch(Quoted().Replace(workspace.Sheet.Text.Text, ""))) yield return "Comments are not carried over.";
        if (song.Riffs.Any(riff => riff.VariationOf is not null)) yield return "A riff that varies another one is written out.";
        if (song.Lesson is { } lesson && lesson.Steps.Any(step => step.Say is not null)) yield return "What the lesson says of strings and frets is as it was: read it over.";
        if (song.RoadMaps.Count > 0) yield return "A road map's stretch of neck is moved along by as many frets as its strings on the whole: read it over.";
    }

    private static IEnumerable<string> CapoNotes(Song song, RetuneOrder order)
    {
        if (order.Capo is not null) yield break;
        foreach (var part in order.Parts.Select(part => song.Parts[part]))
        {
            foreach (var neck in part.Bars.Select(bar => bar.Neck).Prepend(part.Neck).Where(neck => neck.Capo.IsPartial).Distinct())
            {
                var capo = order.Moved(neck).Capo;
                if (capo.IsOff) yield return $"{part.Title}: the {neck.Capo.Words} is taken off, because the new tuning has no neighbouring strings in place of its own; the notes are placed without it.";
                else if (capo != neck.Capo) yield return $"{part.Title}: the {neck.Capo.Words} lies on {(capo.Lowest == capo.Highest ? "string" : "strings")} {capo.Strings} now.";
            }
        }
    }

    [GeneratedRegex("(^|\\s)--", RegexOptions.Multiline)]
    private static partial Regex Comment();

    [GeneratedRegex("\"[^\"\\r\\n]*\"")]
    private static partial Regex Quoted();
}

/// <summary>A song in another tuning, and what that costs.</summary>
/// <param name="Sheet">The new sheet.</param>
/// <param name="Order">What was done.</param>
/// <param name="Parts">Each part of the song.</param>
/// <param name="Riffs">Riffs that no part plays and that lost something.</param>
/// <param name="Offers">Ways to lose less.</param>
/// <param name="Remarks">What the new sheet does not have from the old one.</param>
/// <param name="Findings">What is wrong in the new sheet, at its own lines: errors, and what no hand can do there.</param>
public sealed record RetuneAnswer(
    string Sheet, RetuneOrder Order, ImmutableArray<RetunedPart> Parts, ImmutableArray<RetunedRiff> Riffs, ImmutableArray<RetuneOffer> Offers,
    ImmutableArray<string> Remarks, ImmutableArray<Finding> Findings);

/// <summary>A part of a retuned song.</summary>
/// <param name="Name">Its short name.</param>
/// <param name="Title">Its printed name.</param>
/// <param name="Neck">Its neck now.</param>
/// <param name="IsRetuned">False where it keeps its tuning.</param>
/// <param name="Before">How hard it was.</param>
/// <param name="After">How hard it is now.</param>
/// <param name="Losses">What was lost, in the order of bars.</param>
public sealed record RetunedPart(string Name, string Title, Neck Neck, bool IsRetuned, Difficulty Before, Difficulty After, ImmutableArray<LossLine> Losses)
{
    /// <summary>The losses with the bars each is in: what is said of several bars is said once.</summary>
    public IEnumerable<(string Bars, string Text)> InWords => LossLine.InWords(Losses);
}

/// <summary>A riff that no part plays.</summary>
public sealed record RetunedRiff(string Name, ImmutableArray<LossLine> Losses)
{
    /// <summary>The losses with the bars each is in.</summary>
    public IEnumerable<(string Bars, string Text)> InWords => LossLine.InWords(Losses);
}

/// <summary>Something lost in a bar.</summary>
/// <param name="Kind">What.</param>
/// <param name="Bar">The bar's printed number.</param>
/// <param name="Text">In words, without a full stop.</param>
public sealed record LossLine(RetuneLossKind Kind, int Bar, string Text)
{
    internal static IEnumerable<(string Bars, string Text)> InWords(ImmutableArray<LossLine> losses) =>
        losses.GroupBy(loss => loss.Text).Select(same => (RetuneWords.Bars(same.Select(loss => loss.Bar)), Times(same)));

    private static string Times(IGrouping<string, LossLine> same)
    {
        var (count, bars) = (same.Count(), same.Select(loss => loss.Bar).Distinct().Count());
        return count == bars ? same.Key : string.Create(CultureInfo.InvariantCulture, $"{same.Key} ({count} times)");
    }
}
