using System.Diagnostics;
using System.Globalization;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Placing;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Bench;

/// <summary>How many notes a second the fretting hand is planned for, and placed on the neck, in a six-string part; and what memory a note asks for.</summary>
internal static class HandsLook
{
    private const int Bars = 1200;
    private const int Runs = 9;
    private const int EditedBars = 120;
    private const int Edits = 101;

    public static int Print(TextWriter output)
    {
        var whole = Stages.Song(GeneratedSong.Sheet(Bars));
        var part = whole.Parts.First(p => p.Neck.StringCount == 6);
        var song = whole with { Parts = [part], Riffs = [], RiffUses = [] };
        var notes = OpenNotes(song, part);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Bars} bars, one six-string part, {notes.Count} notes"));
        Measure(output, "hand plan", notes.Count, () => HandPlanner.Plan(song), "20,000 notes a second");
        Measure(output, "pitches to places", notes.Count, () => NotePlacer.Place(notes, part.Neck, HandSize.Average, mayArrange: false), "");

        // Of ten times as many notes: what is held for a note may not grow with them.
        foreach (var bars in (ReadOnlySpan<int>)[Bars / 10, Bars])
        {
            var both = Stages.Song(GeneratedSong.Sheet(bars));
            var one = both with { Parts = [both.Parts.First(p => p.Neck.StringCount == 6)], Riffs = [], RiffUses = [] };
            var planned = one.Parts[0].Bars.Sum(bar => bar.Notes.Count());
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"hand plan, {bars,4} bars  holds at most {HeldMemory.Most(() => HandPlanner.Plan(one)) / planned,6:#,0} bytes a note, its plan included"));
        }

        // One fret changed in the middle of a song: all of it planned again, and only what changed.
        var sheet = GeneratedSong.Sheet(EditedBars);
        var at = sheet.IndexOf("E 8 7", sheet.Length / 2, StringComparison.Ordinal);
        var edited = Stages.Song($"{sheet[..at]}E 8 5{sheet[(at + 5)..]}");
        var before = HandPlanner.Plan(Stages.Song(sheet), new PlayingHand(HandSize.Average));
        output.WriteLine();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{EditedBars} bars, two parts, {edited.NoteCount} notes, one fret edited: under 5 ms wanted"));
        Time(output, "planned anew", () => HandPlanner.Plan(edited));
        Time(output, "from the plan before", () => HandPlanner.Plan(edited, new PlayingHand(HandSize.Average), before));
        return 0;
    }

    private static void Time(TextWriter output, string name, Func<object> way)
    {
        var times = new double[Edits];
        for (var run = -Edits; run < Edits; run++)
        {
            var watch = Stopwatch.StartNew();
            way();
            if (run >= 0) times[run] = watch.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-22} median {times[Edits / 2],6:0.00} ms  best {times[0],6:0.00} ms"));
    }

    private static void Measure(TextWriter output, string name, int notes, Func<object> way, string wanted)
    {
        var timing = Timing.Of(way, Runs);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-20} median {1000 * notes / timing.Median,9:#,0} notes/s  best {1000 * notes / timing.Best,9:#,0} notes/s  allocates {timing.Allocated / notes,6:#,0} bytes a note  {wanted}").TrimEnd());
    }

    // The part's pitches and times, without its strings.
    private static List<OpenNote> OpenNotes(Song song, Part part)
    {
        var notes = new List<OpenNote>();
        var (tempo, start) = (Tempo.Default, 0.0);
        for (var bar = 0; bar < song.Bars.Count; bar++)
        {
            var clock = new BarClock(song.Bars[bar], tempo, start);
            var end = clock.Seconds(song.Bars[bar].Length);
            foreach (var item in part.Bars[bar].Strands.SelectMany(strand => strand.Events))
            {
                var (from, to) = (clock.Seconds(item.Start), clock.Seconds(item.End));
                foreach (var note in item.Notes)
                {
                    var plain = note with { String = new StringNumber(1), Fret = Fret.Open, Attack = Attack.Picked, Harmonic = null };
                    notes.Add(new OpenNote { Note = plain, Neck = part.Neck, Bar = bar, Start = from, End = to, RingsUntil = note.LetsRing ? end : to, Claims = from });
                }
            }
            (tempo, start) = (clock.LastTempo, end);
        }
        return notes;
    }
}
