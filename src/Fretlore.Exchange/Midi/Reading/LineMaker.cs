using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>A note of a part with its written times, in quarter notes from the song's start.</summary>
internal sealed class LineNote
{
    public required MidiKey Key { get; init; }

    public required Beats Start { get; init; }

    public required Beats End { get; set; }

    public WheelCurve? Curve { get; init; }

    public ValueBase? Tremolo { get; init; }

    /// <summary>True when it is heard longer than it is written.</summary>
    public bool Rings { get; set; }
}

/// <summary>Notes that start together in one line, for as long as the line stays on them.</summary>
internal sealed class LineEvent
{
    public required MidiMoment Moment { get; init; }

    public required Beats Start { get; init; }

    public Beats End { get; set; }

    public List<LineNote> Notes { get; init; } = [];

    public bool IsStaccato { get; set; }
}

/// <summary>Shares a part's notes out among lines that can be read: one for most, others for what is held under or over it.</summary>
/// <remarks>
/// What sounds on while others begin is a line of its own where it lies below or above them all and little else is held; otherwise it is
/// let ring, as arpeggios are written. What stops before the rest of its chord stops there where that is worth writing.
/// </remarks>
internal sealed class LineMaker
{
    /// <summary>The line of most notes, of what is held below it and of what is held above it, in the order of a part's strands.</summary>
    public const int Main = 1;
    private const int Bass = 2;
    private const int Top = 4;

    private static readonly Beats WorthWriting = Beats.Of(1, 2);
    private static readonly Beats LongestStaccato = Beats.Of(1, 4);

    private readonly Dictionary<int, List<LineEvent>> lines = new() { [Main] = [], [Bass] = [], [Top] = [] };

    /// <summary>The lines, each in order and without overlaps.</summary>
    public static IReadOnlyDictionary<int, List<LineEvent>> Make(List<(MidiMoment Moment, List<LineNote> Notes)> moments)
    {
        var maker = new LineMaker();
        for (var i = 0; i < moments.Count; i++) maker.Add(moments, i);
        maker.Shorten();
        return maker.lines;
    }

    private void Add(List<(MidiMoment Moment, List<LineNote> Notes)> moments, int index)
    {
        var (moment, notes) = moments[index];
        var start = notes[0].Start;
        Beats? next = index + 1 < moments.Count ? moments[index + 1].Notes[0].Start : null;
        var held = next is { } n ? notes.Where(x => x.End > n).ToList() : [];
        var main = notes.ToList();
        if (held.Count > 0)
        {
            var line = moment.Roll == Roll.None && moment.Stroke == Stroke.None && moment.Graces.Count == 0 ? LineFor(moments, index, held) : null;
            if (line is { } own)
            {
                lines[own].Add(new LineEvent { Moment = moment, Start = start, End = held.Max(x => x.End), Notes = held });
                main.RemoveAll(held.Contains);
            }
            else foreach (var note in held) (note.Rings, note.End) = (true, next!.Value);
        }
        if (main.Count > 0) lines[Main].Add(new LineEvent { Moment = moment, Start = start, End = main.Max(x => x.End), Notes = main });
    }

    // The line in which notes are held under or over others, when there is one that is free and the others let it be seen.
    private int? LineFor(List<(MidiMoment Moment, List<LineNote> Notes)> moments, int index, List<LineNote> held)
    {
        var end = held[0].End;
        if (held.Exists(h => h.End != end)) return null;
        var under = new List<LineNote>(moments[index].Notes.Where(n => !held.Contains(n)));
        for (var i = index + 1; i < moments.Count && moments[i].Notes[0].Start < end; i++) under.AddRange(moments[i].Notes);
        // What begins meanwhile is over before it, or with it, or it is one of many that ring.
        if (under.Exists(n => n.Start > held[0].Start && n.End > end)) return null;
        for (var i = index + 1; i < moments.Count && moments[i].Notes[0].Start < end; i++)
        {
            if (i + 1 < moments.Count && moments[i].Notes.Exists(n => n.End > moments[i + 1].Notes[0].Start)) return null;
        }
        // A string is struck again only when what is held on it has ended.
        if (under.Exists(n => held.Exists(h => h.Key.Channel == n.Key.Channel && h.Key.Number == n.Key.Number))) return null;
        if (IsFree(Bass, held) && under.TrueForAll(n => n.Key.Number > held.Max(h => h.Key.Number))) return Bass;
        return IsFree(Top, held) && under.TrueForAll(n => n.Key.Number < held.Min(h => h.Key.Number)) ? Top : null;
    }

    private bool IsFree(int line, List<LineNote> held) => lines[line].Count == 0 || lines[line][^1].End <= held[0].Start;

    // In each chord what ends early ends there, and short notes before as long a rest are staccato.
    private void Shorten()
    {
        var starts = lines.Values.SelectMany(l => l.Select(e => e.Start)).Distinct().Order().ToList();
        foreach (var line in lines.Values)
        {
            for (var i = 0; i < line.Count; i++)
            {
                var item = line[i];
                if (i + 1 < line.Count && item.End > line[i + 1].Start) item.End = line[i + 1].Start;
                foreach (var note in item.Notes)
                {
                    if (note.End > item.End || item.End - note.End < WorthWriting) note.End = item.End;
                }
                var length = item.End - item.Start;
                var room = i + 1 < line.Count ? line[i + 1].Start - item.End : length;
                var doubled = item.End + length;
                if (item.Moment.Roll != Roll.None || item.Moment.Stroke != Stroke.None || length > LongestStaccato || !IsBinary(length) || !IsBinary(item.Start) || room < length || item.Notes.Exists(n => n.Curve is not null || n.Rings || n.End != item.End)) continue;
                // Nothing of another line may begin where it rests.
                var next = starts.BinarySearch(item.End);
                if (next < 0) next = ~next;
                if (next < starts.Count && starts[next] < doubled) continue;
                if (item.Start.Modulo(length * 2).IsZero && item.Start.WholeCount(Beats.Quarter) == (doubled - Beats.Of(1, 64)).WholeCount(Beats.Quarter))
                {
                    (item.End, item.IsStaccato) = (doubled, true);
                    foreach (var note in item.Notes) note.End = doubled;
                }
            }
        }
    }

    private static bool IsBinary(Beats at) => (at.Denominator & (at.Denominator - 1)) == 0;
}
