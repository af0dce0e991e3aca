using Fretlore.Guitar;
using Fretlore.Hands.Placing;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>The notes of a part or riff in the order they are written: bar by bar, strand by strand, grace notes before their notes.</summary>
internal sealed class SourceLine
{
    private readonly List<Entry> entries = [];

    // When the last event of each strand began; before the first bar there is time enough.
    private readonly double[] before = [-1, -1, -1, -1];

    /// <summary>A note with its time.</summary>
    /// <param name="Note">The note.</param>
    /// <param name="Item">The event it is in.</param>
    /// <param name="Bar">Index of its bar.</param>
    /// <param name="Strand">Which strand.</param>
    /// <param name="Start">In seconds.</param>
    /// <param name="End">In seconds.</param>
    /// <param name="RingsUntil">In seconds.</param>
    /// <param name="Claims">From when its string must be free, in seconds.</param>
    /// <param name="JoinedTo">Index of the note it goes on from on its string, or -1.</param>
    internal sealed record Entry(
        Note Note, Event Item, int Bar, StrandKind Strand, double Start, double End, double RingsUntil, double Claims, int JoinedTo)
    {
        /// <summary>Until when it sounds on its string in the song as written.</summary>
        public double SoundsUntil { get; set; }

        /// <summary>An open string that sounds on while others are struck.</summary>
        public bool IsDrone { get; set; }

        public bool WasOpen => Note.Fret.IsOpen && !Note.IsDead && Note.Harmonic is null;
    }

    private SourceLine(ValueList<PartBar> content) => Content = content;

    public ValueList<PartBar> Content { get; }

    public IReadOnlyList<Entry> Entries => entries;

    /// <summary>For each bar the index of its first entry, and one more for the end.</summary>
    public required int[] FirstOf { get; init; }

    public static SourceLine Read(ValueList<Bar> bars, ValueList<PartBar> content)
    {
        var line = new SourceLine(content) { FirstOf = new int[content.Count + 1] };
        var last = new Dictionary<(StrandKind, StringNumber), int>();
        var (tempo, start) = (Tempo.Default, 0.0);
        for (var bar = 0; bar < content.Count; bar++)
        {
            var clock = new BarClock(bars[bar], tempo, start);
            line.FirstOf[bar] = line.entries.Count;
            foreach (var strand in content[bar].Strands)
            {
                foreach (var item in strand.Events) line.Add(item, bar, strand.Kind, clock, clock.Seconds(bars[bar].Length), last);
            }
            (tempo, start) = (clock.LastTempo, clock.Seconds(bars[bar].Length));
        }
        line.FirstOf[content.Count] = line.entries.Count;
        line.FindWhatSoundsOn();
        return line;
    }

    private void Add(Event item, int bar, StrandKind strand, BarClock clock, double barEnd, Dictionary<(StrandKind, StringNumber), int> last)
    {
        var (start, end) = (clock.Seconds(item.Start), clock.Seconds(item.End));
        var length = BarClock.GraceSeconds(before[(int)strand], start, item.Graces.Count);
        for (var i = 0; i < item.Graces.Count; i++)
        {
            var at = start - length * (item.Graces.Count - i);
            Add(item.Graces[i], at, at + length);
        }
        foreach (var note in item.Notes) Add(note, start, end);
        before[(int)strand] = start;

        void Add(Note note, double at, double to)
        {
            var isJoined = note.Attack is Attack.HammerOn or Attack.PullOff or Attack.Glide or Attack.PickedGlide or Attack.Held;
            var joinedTo = isJoined && last.TryGetValue((strand, note.String), out var from) ? from : -1;
            last[(strand, note.String)] = entries.Count;
            entries.Add(new Entry(note, item, bar, strand, at, to, note.LetsRing ? Math.Max(to, barEnd) : to, start, joinedTo));
        }
    }

    private void FindWhatSoundsOn()
    {
        double[] starts = [.. entries.Select(entry => entry.Start).Order()];
        foreach (var onString in entries.GroupBy(entry => entry.Note.String))
        {
            var inOrder = onString.OrderBy(entry => entry.Start).ToList();
            for (var i = 0; i < inOrder.Count; i++)
            {
                var entry = inOrder[i];
                entry.SoundsUntil = i + 1 < inOrder.Count ? Math.Max(entry.Start, Math.Min(entry.RingsUntil, inOrder[i + 1].Start)) : entry.RingsUntil;
            }
        }
        foreach (var entry in entries)
        {
            var next = Array.BinarySearch(starts, entry.Start + PlaceMoment.SameTime);
            if (next < 0) next = ~next;
            entry.IsDrone = entry.WasOpen && next < starts.Length && starts[next] < entry.SoundsUntil - PlaceMoment.SameTime;
        }
    }
}
