using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Stretches;

/// <summary>A chord that the other parts play, from a place in a bar on.</summary>
/// <param name="At">Quarter notes from the bar's start.</param>
/// <param name="Symbol">As printed.</param>
/// <param name="Root">Its root.</param>
/// <param name="Tones">Its tones, in semitones above the root.</param>
public sealed record ChordSpan(Beats At, string Symbol, NoteName Root, PitchClassSet Tones)
{
    public bool Contains(int pitchClass) => Tones.Contains(NoteName.Wrap(pitchClass - Root.PitchClass, 12));

    /// <summary>The pitch classes that have a role: the chord's own tone, else the scale's, else the usual one.</summary>
    /// <param name="role">The role.</param>
    /// <param name="scale">Pitch classes of the scale in force; null where there is none.</param>
    public PitchClassSet Having(ToneRole role, PitchClassSet? scale)
    {
        var (usual, options) = Options(role);
        var own = options & Tones;
        if (own.IsEmpty && scale is { } notes) own = options & notes.From(Root.PitchClass);
        if (own.IsEmpty) own = PitchClassSet.Of(usual);
        return own.Up(Root.PitchClass);
    }

    // Semitones above the root; a third may be major or minor, a fifth altered, and so on.
    private static (int Usual, PitchClassSet Options) Options(ToneRole role) => role switch
    {
        ToneRole.Root => (0, PitchClassSet.Of(0)),
        ToneRole.Ninth => (2, PitchClassSet.Of(1, 2)),
        ToneRole.Third => (4, PitchClassSet.Of(3, 4)),
        ToneRole.Fourth => (5, PitchClassSet.Of(5)),
        ToneRole.Fifth => (7, PitchClassSet.Of(6, 7, 8)),
        ToneRole.Sixth => (9, PitchClassSet.Of(8, 9)),
        _ => (10, PitchClassSet.Of(10, 11)),
    };

    /// <summary>The chords under a part in a bar, the first at its start: those of the first other part that plays one there.</summary>
    public static ImmutableArray<ChordSpan> Under(int part, int bar, Song song, SongReading reading)
    {
        for (var other = 0; other < song.Parts.Count; other++)
        {
            if (other == part || song.Parts[other].Bars[bar].IsRest) continue;
            var spans = ImmutableArray.CreateBuilder<ChordSpan>();
            ChordSpan? before = null;
            foreach (var moment in reading.Parts[other].Chords)
            {
                if (moment.Bar > bar) break;
                if (moment.Best.Name is not { } name) continue;
                var tones = name.Kind.Family.Tones.Except(name.Kind.Omitted) | name.Kind.Tensions;
                var span = new ChordSpan(moment.Bar < bar ? Beats.Zero : moment.At, moment.Symbol, name.Root, tones);
                if (moment.Bar < bar) before = span;
                else spans.Add(span);
            }
            if (before is not null && (spans.Count == 0 || !spans[0].At.IsZero)) spans.Insert(0, before);
            if (spans.Count > 0) return spans.ToImmutable();
        }
        return [];
    }
}
