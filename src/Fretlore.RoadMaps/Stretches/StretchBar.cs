using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Stretches;

/// <summary>One bar of a stretch with all that is to be known for playing in it: its time, the chords under it, the rules that hold.</summary>
public sealed record StretchBar
{
    /// <summary>From 1.</summary>
    public required int Number { get; init; }

    /// <summary>The song's bar.</summary>
    public required Bar Bar { get; init; }

    /// <summary>Seconds a quarter note lasts at its start.</summary>
    public required double SecondsPerQuarter { get; init; }

    /// <summary>From the stretch's start, in quarter notes.</summary>
    public required Beats Start { get; init; }

    /// <summary>What is played when a fixed phrase stands here; null in a free bar.</summary>
    public PartBar? Fixed { get; init; }

    /// <summary>Chords of the other parts; empty where none is heard.</summary>
    public ImmutableArray<ChordSpan> Chords { get; init; } = [];

    /// <summary>Strong beats, in quarter notes from the bar's start.</summary>
    public required ValueList<Beats> StrongBeats { get; init; }

    /// <summary>Every beat.</summary>
    public required ValueList<Beats> BeatStarts { get; init; }

    public ScaleRule? Scale { get; init; }

    /// <summary>Pitch classes of <see cref="Scale"/>.</summary>
    public PitchClassSet? ScaleTones { get; init; }

    public RolesRule? Roles { get; init; }

    public StringsRule? Strings { get; init; }

    public FretsRule? Frets { get; init; }

    /// <summary>The frets of <see cref="Frets"/> here.</summary>
    public FretWindow? Window { get; init; }

    public DensityRule? Density { get; init; }

    public RhythmRule? Rhythm { get; init; }

    /// <summary>Those that are for this bar.</summary>
    public ImmutableArray<AvoidRule> Avoids { get; init; } = [];

    public bool IsFree => Fixed is null;

    public Beats Length => Bar.Length;

    public bool IsStrong(Beats at) => StrongBeats.Items.Contains(at);

    public ChordSpan? ChordAt(Beats at) => Chords.LastOrDefault(c => c.At <= at) ?? Chords.FirstOrDefault();

    /// <summary>True when a string may be used at all, and its fret.</summary>
    public bool Allows(int number, int fret) =>
        (Strings is null || (number >= Strings.Highest.Value && number <= Strings.Lowest.Value)) && (Window is not { } window || window.Contains(fret));

    /// <summary>The pitch classes that the rules leave at a time; null for all.</summary>
    public PitchClassSet? TonesAt(Beats at)
    {
        if (Roles is null || (ScaleTones is not null && !IsStrong(at)) || ChordAt(at) is not { } chord) return ScaleTones;
        var tones = new PitchClassSet();
        foreach (var role in Roles.Roles) tones |= chord.Having(role, ScaleTones);
        return tones;
    }

    /// <summary>The widest leap that is not to be avoided, in semitones; null for any.</summary>
    public int? WidestLeap { get; init; }

    /// <summary>True when no note may come twice in a row.</summary>
    public bool ForbidsRepeats { get; init; }

    public bool Forbids<T>() where T : Avoided => Avoids.Any(a => a.What.Items.Any(w => w is T));

    public bool ForbidsNote(int pitchClass) => Avoids.Any(a => a.What.Items.Any(w => w is Avoided.Note note && note.Name.PitchClass == pitchClass));
}
