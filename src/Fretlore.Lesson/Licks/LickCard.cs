using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Licks;

/// <summary>A lick in one place and key.</summary>
/// <param name="Title">What it is, such as "Same notes, two strings lower".</param>
/// <param name="Lick">Its music.</param>
/// <param name="Hand">What it asks of the fretting hand.</param>
/// <param name="Fingers">The hand plan, as <see cref="LickFingers"/> prints it.</param>
internal sealed record LickVersion(string Title, Riff Lick, HandLoad Hand, string Fingers);

/// <summary>Finds the other keys and positions of a lick that are worth practising: those within reach that are easiest for the hand.</summary>
/// <param name="Song">The song it comes from.</param>
/// <param name="Home">The song's key, to name the others by.</param>
internal sealed record LickCard(Song Song, Key Home)
{
    /// <summary>A longer one is shown as it is played and no other way.</summary>
    private const int MostBarsMoved = 4;

    private const int Positions = 2, Keys = 3;

    // Beyond it few practise, and many necks are hard to reach (common practice); a lick that lies higher may be moved as high as it lies.
    private const int HighestPractised = 19;

    // Whole moves that players practise: by fourths and fifths, steps and thirds.
    private static ReadOnlySpan<int> Moves => [5, 7, -5, 2, -2, 3, -3, 4, 9];

    /// <summary>As it is played, then other positions, then other keys; each with its hand plan.</summary>
    /// <param name="riff">The lick.</param>
    /// <param name="tempo">How fast it is played.</param>
    public ImmutableArray<LickVersion> Of(Riff riff, Tempo tempo)
    {
        var versions = ImmutableArray.CreateBuilder<LickVersion>();
        versions.Add(Planned("As in the song", riff, tempo));
        if (riff.Bars.Count > MostBarsMoved) return versions.DrainToImmutable();
        var positions = new List<LickVersion>();
        foreach (var strings in (int[])[1, 2, -1, -2])
        {
            if (LickMove.Across(riff, strings) is { } moved) positions.Add(Planned(Position(strings), moved, tempo));
        }
        var highest = Math.Max(HighestPractised, HighestOf(riff));
        versions.AddRange(positions.Where(p => CanBePlayed(p) && HighestOf(p.Lick) <= highest).OrderBy(p => p.Hand.Cost).Take(Positions));
        var keys = new List<LickVersion>();
        foreach (var semitones in Moves)
        {
            if (LickMove.Along(riff, semitones) is { } moved) keys.Add(Planned(KeyTitle(semitones), moved, tempo));
        }
        // Of those that are as easy, the usual moves first.
        versions.AddRange(keys.Where(k => CanBePlayed(k) && HighestOf(k.Lick) <= highest).OrderBy(k => k.Hand.Difficulty).Take(Keys));
        return versions.DrainToImmutable();
    }

    private LickVersion Planned(string title, Riff riff, Tempo tempo)
    {
        var own = Numbered(riff);
        var song = RiffSong.Of(Song, own, tempo) with { NoteCount = own.Content.Sum(bar => bar.Notes.Count()) };
        var plan = HandPlanner.Plan(song);
        var line = plan.Parts[0];
        return new LickVersion(title, riff, line.Problems.IsEmpty ? line.Whole : line.Whole with { Difficulty = Difficulty.Hard, Cost = double.MaxValue }, LickFingers.Of(own.Content, plan));
    }

    private static int HighestOf(Riff riff) => riff.Content.SelectMany(bar => bar.Notes).Select(note => note.Fret.Number).DefaultIfEmpty().Max();

    private static bool CanBePlayed(LickVersion version) => version.Hand.Cost < double.MaxValue;

    /// <summary>The lick with note ids from 0 on, for a song of its own.</summary>
    internal static Riff Numbered(Riff riff, int from = 0)
    {
        var next = from;
        return riff with
        {
            Content = riff.Content.Select(bar => bar with
            {
                Strands = bar.Strands.Select(strand => strand with
                {
                    Events = strand.Events.Select(e => e with { Graces = Ids(e.Graces), Notes = Ids(e.Notes) }).ToValueList(),
                }).ToValueList(),
            }).ToValueList(),
        };

        ValueList<Note> Ids(ValueList<Note> notes) => notes.Select(note => note with { Id = new NoteId(next++) }).ToValueList();
    }

    private static string Position(int strings)
    {
        var count = NumberWords.Of(Math.Abs(strings));
        return $"Same notes, {count} {(Math.Abs(strings) == 1 ? "string" : "strings")} {(strings > 0 ? "lower" : "higher")}";
    }

    private string KeyTitle(int semitones)
    {
        var key = Home.Tonic.Transpose(Interval.Chromatic(NoteName.Wrap(semitones, 12)));
        // Of two spellings the one with fewer signs.
        if (Math.Abs(key.Alteration) > 1 || key.ToString() is "E#" or "B#" or "Cb" or "Fb" or "D#" or "A#" or "G#") key = NoteName.FromFifths(key.Fifths > 0 ? key.Fifths - 12 : key.Fifths + 12);
        var distance = Math.Abs(semitones) switch { 2 => "a whole step", 3 => "three frets", 4 => "four frets", 5 => "a fourth", 7 => "a fifth", _ => $"{NumberWords.Of(Math.Abs(semitones))} frets" };
        var mode = Home.ToString()[Home.Tonic.ToString().Length..];
        return $"In {key}{mode}: {distance} {(semitones > 0 ? "up" : "down")}";
    }
}
