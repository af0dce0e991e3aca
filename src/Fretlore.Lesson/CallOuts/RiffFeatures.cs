using Fretlore.Guitar;
using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts;

/// <summary>What the hands do most in a riff.</summary>
internal enum Playing
{
    /// <summary>Nothing: all of it is rests.</summary>
    Nothing,

    /// <summary>More than half of what is played is several strings at once, and more than half of that one fret across them.</summary>
    OneFinger,

    /// <summary>More than half is several strings at once, and more than half of that two.</summary>
    Pairs,

    /// <summary>More than half is several strings at once, with one to five named shapes.</summary>
    Shapes,

    /// <summary>More than half is several strings at once, in no way that has a name.</summary>
    SeveralStrings,

    /// <summary>Single notes on three strings or more, more than half of them left to ring.</summary>
    RingingLine,

    /// <summary>Single notes, more than a third of them hammered, pulled off or tapped.</summary>
    LegatoLine,

    /// <summary>Any other line of single notes.</summary>
    SingleNoteLine,
}

/// <summary>What there is to listen for, the most telling first.</summary>
internal enum Device
{
    Gallop,
    Gallops,
    PalmMutes,
    Bend,
    Bends,
    Taps,
    Harmonics,
    Slides,
    Tuplets,
}

/// <summary>The frets of a riff.</summary>
/// <param name="Lowest">Lowest stopped fret; 0 when none is stopped.</param>
/// <param name="Highest">Highest stopped fret; 0 when none is stopped.</param>
/// <param name="Open">Strings played open: none, one, or 2 for more than one.</param>
internal readonly record struct Reach(int Lowest, int Highest, int Open);

/// <summary>The note value that a riff is made of.</summary>
/// <param name="Value">The value.</param>
/// <param name="Tuplet">Its tuplet.</param>
/// <param name="IsAll">True when every note has it; otherwise two in three or more.</param>
internal readonly record struct MainValue(NoteValue Value, Tuplet? Tuplet, bool IsAll);

/// <summary>All that a headline says about the notes of a riff, its likeness to another riff aside. Two riffs of equal features have one headline.</summary>
internal sealed record RiffFeatures
{
    private const int MostShapes = 5, MostDevices = 3, LeastForMainValue = 4;

    public Playing Playing { get; init; }

    /// <summary>Low to high: the strings across which one finger lies, or those used where they are one or two, or else the lowest and the highest; none for shapes.</summary>
    public ValueList<StringNumber> Strings { get; init; }

    /// <summary>True when strings from the lowest to the highest are meant.</summary>
    public bool IsSpan { get; init; }

    /// <summary>The shapes as they are named aloud, articles and "and" taken out.</summary>
    public string Shapes { get; init; } = "";

    public Reach Reach { get; init; }

    public ValueList<Device> Devices { get; init; }

    /// <summary>Bars, the pickup not counted.</summary>
    public int Bars { get; init; }

    public bool HasPickup { get; init; }

    /// <summary>Bars with all repeats played.</summary>
    public int BarsPlayed { get; init; }

    /// <summary>The metre's two numbers; null where it changes.</summary>
    public (int Count, int Unit)? Meter { get; init; } = (4, 4);

    public MainValue? MainValue { get; init; }

    public static RiffFeatures Of(Riff riff)
    {
        Event[] events = [.. riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => !e.IsRest)];
        Note[] notes = [.. events.SelectMany(e => e.Notes)];
        var meters = riff.Bars.Select(b => (b.Meter.Count, b.Meter.Unit)).Distinct().ToArray();
        var features = new RiffFeatures
        {
            Bars = riff.Bars.Count(b => !b.IsPickup),
            HasPickup = riff.Bars.Any(b => b.IsPickup),
            BarsPlayed = PlayOrder.Of(riff.Bars).Count(p => !riff.Bars[p.Bar].IsPickup),
            Meter = meters is [var one] ? one : null,
        };
        if (events.Length == 0) return features;
        features = features with { Reach = ReachOf(notes), Devices = DevicesOf(riff, events, notes), MainValue = MainValueOf(events) };
        Event[] together = [.. events.Where(e => e.Notes.Count > 1)];
        return together.Length * 2 > events.Length ? Chords(features, together) : Line(features, events, notes);
    }

    private static RiffFeatures Chords(RiffFeatures features, Event[] together)
    {
        Event[] uniform = [.. together.Where(EventTeller.IsUniform)];
        if (uniform.Length * 2 > together.Length)
        {
            var most = uniform.Select(e => e.Notes.Select(n => n.String).ToValueList()).GroupBy(p => p).OrderByDescending(g => g.Count()).First().Key;
            if (StringWords.IsBlock(most)) return features with { Playing = Playing.OneFinger, Strings = most };
        }
        Event[] pairs = [.. together.Where(e => e.Notes.Count == 2)];
        if (pairs.Length * 2 > together.Length) return On(features with { Playing = Playing.Pairs }, pairs.SelectMany(e => e.Notes));
        string[] names = [.. together.Select(e => e.Shape).OfType<string>().Distinct().Select(SpokenName.OfShape)];
        return names.Length is > 0 and <= MostShapes
            ? features with { Playing = Playing.Shapes, Shapes = WordsOf(names) }
            : features with { Playing = Playing.SeveralStrings };
    }

    /// <summary>Names as they are compared: a comma or "and" between them is only breath.</summary>
    public static string WordsOf(IEnumerable<string> names) => string.Join(' ', names.Select(n => new WordRow(n).Rest));

    private static RiffFeatures Line(RiffFeatures features, Event[] events, Note[] notes)
    {
        var rings = events.Length > 3 && events.Count(e => e.Notes.Any(n => n.LetsRing)) * 2 > events.Length && notes.Select(n => n.String).Distinct().Count() > 2;
        var slurred = notes.Count(n => n.Attack is Attack.HammerOn or Attack.PullOff or Attack.Tap) * 3 > notes.Length;
        return On(features with { Playing = rings ? Playing.RingingLine : slurred ? Playing.LegatoLine : Playing.SingleNoteLine }, notes);
    }

    private static RiffFeatures On(RiffFeatures features, IEnumerable<Note> notes)
    {
        var used = notes.Select(n => n.String).Distinct().OrderByDescending(s => s.Value).ToValueList();
        return used.Count > 2 ? features with { Strings = [used[0], used[^1]], IsSpan = true } : features with { Strings = used };
    }

    private static Reach ReachOf(Note[] notes)
    {
        int[] stopped = [.. notes.Where(n => !n.IsDead && !n.Fret.IsOpen).Select(n => n.Fret.Number)];
        var open = notes.Where(n => n.Fret.IsOpen && !n.IsDead).Select(n => n.String).Distinct().Count();
        return new Reach(stopped.DefaultIfEmpty(0).Min(), stopped.DefaultIfEmpty(0).Max(), Math.Min(open, 2));
    }

    private static ValueList<Device> DevicesOf(Riff riff, Event[] events, Note[] notes)
    {
        var gallops = riff.Content.SelectMany(b => b.Strands).SelectMany(s => RhythmRun.Of(s.Events)).Where(r => r.Cell != Cell.None).Sum(r => r.Count / 3);
        var bends = notes.Count(n => n.Bend is not null);
        (bool IsThere, Device Device)[] all =
        [
            (gallops == 1, Device.Gallop), (gallops > 1, Device.Gallops), (notes.Any(n => n.IsPalmMuted), Device.PalmMutes),
            (bends == 1, Device.Bend), (bends > 1, Device.Bends), (notes.Any(n => n.Attack == Attack.Tap), Device.Taps),
            (notes.Any(n => n.Harmonic is not null), Device.Harmonics),
            (notes.Any(n => n.Attack is Attack.Glide or Attack.PickedGlide || n.GlideIn != GlideIn.None || n.GlideOut != GlideOut.None), Device.Slides),
            (events.Any(e => e.Tuplet is not null), Device.Tuplets),
        ];
        return all.Where(d => d.IsThere).Select(d => d.Device).Take(MostDevices).ToValueList();
    }

    private static MainValue? MainValueOf(Event[] events)
    {
        if (events.Length < LeastForMainValue) return null;
        var most = events.GroupBy(e => (e.Value, e.Tuplet)).MaxBy(g => g.Count())!;
        return most.Count() * 3 < events.Length * 2 ? null : new MainValue(most.Key.Value, most.Key.Tuplet, most.Count() == events.Length);
    }
}
