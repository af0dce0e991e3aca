using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound.Strings;

namespace Fretlore.Sound.Mixing;

/// <summary>The notes of one string with their places in the sound, the neck it is on, and the string itself where the sheet says it.</summary>
internal sealed record StringNotes(StringNumber String, Neck Neck, ImmutableArray<StringNote> Notes, GuitarString? Said)
{
    private const int HighestPartial = 16;

    /// <summary>Every string of a part, the lowest first; those that nobody plays are empty.</summary>
    /// <param name="song">The performance.</param>
    /// <param name="part">The part as it is played.</param>
    /// <param name="stretch">The bars that are heard.</param>
    /// <param name="take">0 for the first time it is recorded, 1 for the second.</param>
    /// <param name="varies">True where the pick meets the string a little elsewhere each time.</param>
    public static List<StringNotes> Of(PerformedSong song, PerformedPart part, Stretch stretch, int take, bool varies)
    {
        Neck NeckIn(int playedBar) => part.Part.Bars[song.Bars[playedBar].Bar].Neck;
        // By the score's own time: a player who is early for the first beat still plays it.
        var heard = part.Notes.Where(n => song.Tempo.SecondsAt(n.Onset) is var at && at >= stretch.Start - 1e-9 && at < stretch.End - 1e-9)
            .ToLookup(n => n.String.Value);
        var usual = NeckIn(stretch.First);
        var count = Math.Max(usual.StringCount, heard.Select(onString => onString.Key).DefaultIfEmpty(0).Max());
        var strings = new List<StringNotes>();
        for (var number = count; number >= 1; number--)
        {
            var neck = heard[number].Select(n => NeckIn(n.Bar)).FirstOrDefault(usual);
            var notes = heard[number].SelectMany(n => Rounds(NoteOf(n, NeckIn(n.Bar), stretch, take, varies), stretch)).OrderBy(n => n.Start);
            var said = part.Part.Strings.Count == neck.StringCount && number <= neck.StringCount ? part.Part.Strings[number - 1] : null;
            strings.Add(new StringNotes(new StringNumber(number), neck, [.. notes], said));
        }
        return strings;
    }

    internal static StringNote NoteOf(PerformedNote note, Neck neck, Stretch stretch, int take, bool varies)
    {
        var (start, end) = (stretch.SampleAt(note.OnsetSeconds), stretch.SampleAt(Math.Min(note.ReleaseSeconds, stretch.End)));
        var (hertz, partial) = Vibrating(note, neck);
        var alone = note with { Note = default, HeldNotes = [], Bar = 0, Onset = Beats.Zero, Release = Beats.Zero, OnsetSeconds = 0, ReleaseSeconds = 0 };
        return new StringNote(alone, start, end, hertz, partial, NoteSeed.Of(note, take, varies), varies);
    }

    private static (double Hertz, int Partial) Vibrating(PerformedNote note, Neck neck)
    {
        var hertz = note.Height.Hertz();
        if (note.Harmonic is not { } harmonic) return (hertz, 1);
        if (harmonic.Kind == HarmonicKind.Pinch) return (hertz, Push.PinchedPartial(hertz / neck.Sounding(note.String, Fret.Open).Hertz()));
        // The string vibrates in as many loops as the harmonic is above what is stopped.
        var stopped = neck.Sounding(note.String, harmonic.Kind == HarmonicKind.Natural ? Fret.Open : note.Fret);
        var partial = (int)Math.Round(Math.Pow(2, (note.Height - stopped) / 12.0));
        return (stopped.Hertz(), Math.Clamp(partial, 1, HighestPartial));
    }

    // Only the last of what began before anything is heard matters, and the player comes to that by itself.
    private static IEnumerable<StringNote> Rounds(StringNote note, Stretch stretch) => stretch.Rounds()
        .Select(by => note with { Start = note.Start + by, End = note.End + by })
        .Where(n => !stretch.IsLoop || (n.End > 0 && n.Start < stretch.RunUp + stretch.Length + Stretch.Seam));
}
