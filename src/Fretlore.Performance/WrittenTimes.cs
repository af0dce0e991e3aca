using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>One time a written note is heard.</summary>
/// <param name="Bar">Index into <see cref="PerformedSong.Bars"/>; the pass is there.</param>
/// <param name="Start">Seconds from the song's start at which it is played, or at which its value begins where it is held from before.</param>
/// <param name="End">Seconds from the song's start at which it stops, or at which its value ends where it is held on.</param>
public readonly record struct HeardTime(int Bar, double Start, double End);

/// <summary>When what is written is heard, and what is written where something is heard: for a cursor that follows the sound.</summary>
public sealed class WrittenTimes
{
    private readonly PerformedSong song;
    private readonly Swing[] swings;
    private readonly List<HeardTime>?[] notes;

    private WrittenTimes(PerformedSong song)
    {
        this.song = song;
        swings = Swing.AllOf(song.Song);
        notes = new List<HeardTime>[song.Song.NoteCount];
        foreach (var part in song.Parts) Add(part);
    }

    public static WrittenTimes Of(PerformedSong song) => new(song);

    /// <summary>Each time a written note is heard, in order of time; none for a note of a riff's definition, which is not in the song itself.</summary>
    /// <remarks>A tremolo-picked note is heard once, from its first stroke to the end of its last.</remarks>
    public ImmutableArray<HeardTime> Of(NoteId note) => notes[note.Index] is { } heard ? [.. heard] : [];

    /// <summary>Seconds from the song's start at which a place in a played bar is reached, feel included.</summary>
    /// <param name="bar">Index into <see cref="PerformedSong.Bars"/>.</param>
    /// <param name="at">Quarter notes from the bar's start, as written.</param>
    public double SecondsAt(int bar, Beats at)
    {
        var played = song.Bars[bar];
        return song.Tempo.SecondsAt(played.Start + swings[played.Bar].Place(at));
    }

    /// <summary>The played bar that sounds at a time: an index into <see cref="PerformedSong.Bars"/>, the first before the song and the last after it.</summary>
    /// <param name="seconds">From the song's start.</param>
    public int BarAt(double seconds)
    {
        var (low, high) = (0, song.Bars.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (song.Bars[middle].StartSeconds <= seconds) low = middle;
            else high = middle - 1;
        }
        return low;
    }

    private void Add(PerformedPart part)
    {
        var heard = new Dictionary<(NoteId Note, int Bar), (double Start, double End)>();
        foreach (var note in part.Notes)
        {
            var start = heard.TryGetValue((note.Note, note.Bar), out var before) ? before.Start : note.OnsetSeconds;
            heard[(note.Note, note.Bar)] = (start, note.ReleaseSeconds);
        }
        var held = new Dictionary<StrandAndString, double>();
        foreach (var played in PlayedEvent.AllOf(part.Part, song.Bars, swings))
        {
            foreach (var note in played.Event.Graces.Concat(played.Event.Notes))
            {
                var valueEnd = song.Tempo.SecondsAt(played.End);
                var chain = new StrandAndString(played.Strand, note.String.Value);
                if (heard.TryGetValue((note.Id, played.Bar), out var own)) held[chain] = own.End;
                else own = (song.Tempo.SecondsAt(played.Start), held.GetValueOrDefault(chain, valueEnd));
                var end = note.IsHeldOn ? Math.Min(valueEnd, own.End) : own.End;
                // The last string of a rolled shape may come in when its value is over already.
                Put(note.Id, new HeardTime(played.Bar, own.Start, Math.Max(own.Start, end)));
            }
        }
    }

    private void Put(NoteId note, HeardTime time) => (notes[note.Index] ??= []).Add(time);

    private readonly record struct StrandAndString(StrandKind Strand, int String);
}
