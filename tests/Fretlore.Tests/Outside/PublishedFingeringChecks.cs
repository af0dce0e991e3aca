using System.Globalization;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Placing;
using Fretlore.Hands.Plans;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>Strings and fingers of music in the public domain as it has been printed for players, entered from memory.</summary>
/// <remarks>
/// The scales are those of the first position that guitar methods have printed since M. Carcassi's op. 59 (1836). The anonymous romance in E minor is
/// in print in countless editions, its melody on the first string throughout and the fifth and seventh positions barred.
/// </remarks>
public class PublishedFingeringChecks(ITestOutputHelper output)
{
    /// <summary>string:fret:finger; open strings have no finger.</summary>
    private static readonly (string Key, string Notes)[] Scales =
    [
        ("C major", "5:3:3 4:0 4:2:2 4:3:3 3:0 3:2:2 2:0 2:1:1 2:3:3 1:0 1:1:1 1:3:3"),
        ("G major", "6:3:3 5:0 5:2:2 5:3:3 4:0 4:2:2 4:4:4 3:0 3:2:2 2:0 2:1:1 2:3:3 1:0 1:2:2 1:3:3"),
        ("D major", "4:0 4:2:2 4:4:4 3:0 3:2:2 2:0 2:2:2 2:3:3 1:0 1:2:2 1:3:3"),
        ("A major", "5:0 5:2:2 5:4:4 4:0 4:2:2 4:4:4 3:1:1 3:2:2 2:0 2:2:2 2:3:3 1:0 1:2:2 1:4:4"),
        ("E major", "6:0 6:2:2 6:4:4 5:0 5:2:2 5:4:4 4:1:1 4:2:2 4:4:4 3:1:1 3:2:2 2:0 2:2:2 2:4:4 1:0"),
        ("F major", "4:3:3 3:0 3:2:2 3:3:3 2:1:1 2:3:3 1:0 1:1:1 1:3:3"),
        ("A minor, melodic", "5:0 5:2:2 5:3:3 4:0 4:2:2 4:4:4 3:1:1 3:2:2 2:0 2:1:1 2:3:3 1:0"),
        ("E minor, natural", "6:0 6:2:2 6:3:3 5:0 5:2:2 5:3:3 4:0 4:2:2 4:4:4 3:0 3:2:2 2:0 2:1:1 2:3:3 1:0"),
        ("D minor, natural", "4:0 4:2:2 4:3:3 3:0 3:2:2 3:3:3 2:1:1 2:3:3 1:0 1:1:1 1:3:3"),
    ];

    /// <summary>Beat for beat: frets of the first, second and third string one after another; a bass note (string:fret) before the first of a bar.</summary>
    private static readonly string[] Romance =
    [
        "6:0 | 7 0 0 | 7 0 0 | 7 0 0",
        "6:0 | 7 0 0 | 5 0 0 | 3 0 0",
        "6:0 | 3 0 0 | 2 0 0 | 0 0 0",
        "6:0 | 0 0 0 | 3 0 0 | 7 0 0",
        "6:0 | 12 0 0 | 12 0 0 | 12 0 0",
        "6:0 | 12 0 0 | 10 0 0 | 8 0 0",
        "5:0 | 8 5 5 | 7 5 5 | 5 5 5",
        "5:0 | 5 5 5 | 7 5 5 | 8 5 5",
        "6:7 | 7 7 8 | 8 7 8 | 7 7 8",
        "6:7 | 11 7 8 | 8 7 8 | 7 7 8",
        "6:0 | 7 0 0 | 5 0 0 | 3 0 0",
        "6:0 | 3 0 0 | 2 0 0 | 0 0 0",
    ];

    [Fact]
    public void Strings_OfTheRomanceAndTheScales_AreThoseInPrint()
    {
        var (same, all) = (0, 0);
        foreach (var (name, notes) in Scales.Select(s => (s.Key, Scale(s.Notes).ToList())).Append(("Romance", Romanza().ToList())))
        {
            var neck = new Neck(Tuning.Standard);
            var open = notes.Select(n => new OpenNote
            {
                Note = new Note { String = new StringNumber(1), Fret = Fret.Open, Sounding = neck.Sounding(n.String, n.Fret) },
                Neck = neck,
                Start = n.At,
                End = n.At + n.Length,
                RingsUntil = n.At + n.Length,
                Claims = n.At,
            }).ToList();
            var places = NotePlacer.Place(open, neck, HandSize.Average, mayArrange: false);
            var here = Enumerable.Range(0, notes.Count).Count(i => places[i]?.String == notes[i].String);
            output.WriteLine($"{name}: {here} of {notes.Count} strings" + string.Concat(Enumerable.Range(0, notes.Count).Where(i => places[i]?.String != notes[i].String)
                .Select(i => $"; note {i + 1} on {places[i]?.String}:{places[i]?.Fret} for {notes[i].String}:{notes[i].Fret}")));
            same += here;
            all += notes.Count;
        }
        output.WriteLine($"{100.0 * same / all:0.0} % of {all} strings");
        Assert.InRange((double)same / all, 0.9, 1);
    }

    [Fact]
    public void Fingers_OfTheScales_AreThoseInPrint()
    {
        var (same, all) = (0, 0);
        foreach (var (key, text) in Scales)
        {
            var notes = Scale(text).ToList();
            var song = Sheets.Song($"title T\ntuning E2 A2 D3 G3 B3 E4\nmeter {notes.Count}/8\ntempo Q = 90\nsection A\n  E {string.Join(' ', notes.Select(n => $"{n.Fret}@{n.String}"))} |\n");
            var hands = HandPlanner.Plan(song);
            var planned = song.Parts[0].Bars[0].Notes.Select(n => (int?)hands.Of(n.Id).Finger ?? 0).ToArray();
            output.WriteLine($"{key}: {string.Join(' ', planned)}");
            for (var i = 0; i < notes.Count; i++)
            {
                if (notes[i].Fret.IsOpen) continue;
                all++;
                if (planned[i] == notes[i].Finger) same++;
            }
        }
        output.WriteLine($"{100.0 * same / all:0.0} % of {all} fingers");
        Assert.InRange((double)same / all, 0.8, 1);
    }

    private readonly record struct Printed(StringNumber String, Fret Fret, int Finger, double At, double Length);

    private static IEnumerable<Printed> Scale(string notes) => notes.Split(' ').Select((note, i) =>
    {
        var numbers = note.Split(':').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        return new Printed(new StringNumber(numbers[0]), new Fret(numbers[1]), numbers.Length > 2 ? numbers[2] : 0, i / 3.0, 1 / 3.0);
    });

    // At 90 quarter notes a minute; bass notes sound for their bar, the others until their string is struck again.
    private static IEnumerable<Printed> Romanza()
    {
        const double beat = 60 / 90.0;
        for (var bar = 0; bar < Romance.Length; bar++)
        {
            var beats = Romance[bar].Split(" | ");
            var bass = beats[0].Split(':').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray();
            yield return new Printed(new StringNumber(bass[0]), new Fret(bass[1]), 0, bar * 3 * beat, 3 * beat);
            for (var b = 0; b < 3; b++)
            {
                var frets = beats[b + 1].Split(' ').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray();
                for (var s = 0; s < 3; s++)
                {
                    yield return new Printed(new StringNumber(s + 1), new Fret(frets[s]), 0, (bar * 3 + b + s / 3.0) * beat, beat);
                }
            }
        }
    }
}
