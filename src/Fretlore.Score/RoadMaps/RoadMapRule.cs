using System.Globalization;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>One rule of a road map: one line of its block.</summary>
/// <param name="Bars">The bars it is for; null for all.</param>
/// <remarks>
/// Scale, roles, strings, frets, density and rhythm say what the notes of free bars may be: the rule for a bar takes the place of the one for all. Fixed
/// phrases are as they are, and so are licks; only what is to be avoided binds licks too.
/// </remarks>
public abstract record RoadMapRule(StretchBars? Bars)
{
    /// <summary>The rule without its bars, as a sheet has it.</summary>
    protected abstract string Words { get; }

    /// <summary>The rule as a sheet has it, such as <c>aim A in bar 4</c>.</summary>
    public sealed override string ToString() => Bars is null ? Words : Words + " " + Bars;

    private protected static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A riff that is played as written: <c>fixed dive in bar 1</c>.</summary>
/// <param name="Riff">The riff's name.</param>
/// <param name="Bars">Where it begins, or the bars it fills, over and over where it is shorter.</param>
public sealed record FixedRule(string Riff, StretchBars Bars) : RoadMapRule(Bars)
{
    protected override string Words => "fixed " + Riff;
}

/// <summary>The scale that notes are from: <c>scale A dorian</c>.</summary>
/// <param name="Tonic">Its tonic.</param>
/// <param name="Name">A name of the scale table, as written.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record ScaleRule(NoteName Tonic, string Name, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => $"scale {Tonic} {Name}";
}

/// <summary>Roles that notes have in the chord under them: <c>roles root, third</c>. Together with a scale they are for strong beats only.</summary>
/// <param name="Roles">At least one.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record RolesRule(ValueList<ToneRole> Roles, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => "roles " + string.Join(", ", Roles.Select(r => r.ToString().ToLowerInvariant()));
}

/// <summary>What a note is to a chord.</summary>
public enum ToneRole
{
    Root,
    Third,
    Fourth,
    Fifth,
    Sixth,
    Seventh,
    Ninth,
}

/// <summary>The strings to stay on: <c>strings 1-4</c>.</summary>
/// <param name="Highest">The one with the smallest number.</param>
/// <param name="Lowest">The one with the largest number.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record StringsRule(StringNumber Highest, StringNumber Lowest, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => Highest == Lowest ? $"strings {Highest}" : $"strings {Highest}-{Lowest}";
}

/// <summary>The frets to stay on: <c>frets 10-14</c>; or a way along the neck: <c>from fret 15 to fret 5</c>.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Moves">True for a way: the hand goes from one to the other. False for a place, lowest fret first.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record FretsRule(Fret From, Fret To, bool Moves, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => Moves ? $"from fret {From} to fret {To}" : From == To ? $"frets {From}" : $"frets {From}-{To}";
}

/// <summary>The slowest and the fastest value: <c>density E to S</c>. A note that the line comes to rest on may be longer.</summary>
/// <param name="Slowest">The longer value.</param>
/// <param name="Fastest">The shorter value, or the same.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record DensityRule(ValueBase Slowest, ValueBase Fastest, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => Slowest == Fastest ? $"density {Letter(Slowest)}" : $"density {Letter(Slowest)} to {Letter(Fastest)}";

    internal static char Letter(ValueBase value) => value switch
    {
        ValueBase.Whole => 'W',
        ValueBase.Half => 'H',
        ValueBase.Quarter => 'Q',
        ValueBase.Eighth => 'E',
        ValueBase.Sixteenth => 'S',
        ValueBase.ThirtySecond => 'Y',
        _ => 'Z',
    };
}

/// <summary>The rhythm cells that bars are made of: <c>rhythm ESS, Q.E, E:3</c>. The end of a cell may be left out: held, or a breath.</summary>
/// <param name="Cells">At least one.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record RhythmRule(ValueList<RhythmCell> Cells, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => "rhythm " + string.Join(", ", Cells);
}

/// <summary>The way the line goes: <c>contour falling</c>.</summary>
/// <param name="Shape">The way.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record ContourRule(Contour Shape, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => "contour " + Shape.ToString().ToLowerInvariant();
}

/// <summary>Ways a line can go, told by its landmarks: the first note of each bar that has one, and the last note of all.</summary>
public enum Contour
{
    /// <summary>No landmark is below the one before, and the last is above the first.</summary>
    Rising,

    /// <summary>No landmark is above the one before, and the last is below the first.</summary>
    Falling,

    /// <summary>Rising to a landmark between, and falling from there.</summary>
    Arch,

    /// <summary>Falling to a landmark between, and rising from there.</summary>
    Valley,

    /// <summary>No landmark is more than a fourth from the first.</summary>
    Level,

    /// <summary>Up and down in turn from landmark to landmark.</summary>
    Wave,
}

/// <summary>Riffs that may be drawn on, as they are or varied: <c>may use dive, climb in bars 3-6</c>.</summary>
/// <param name="Riffs">Their names; at least one.</param>
/// <param name="Bars">The bars they fit into; null for wherever their notes keep the rules.</param>
public sealed record LickRule(ValueList<string> Riffs, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => "may use " + string.Join(", ", Riffs);
}

/// <summary>A note to land on: <c>aim A by a half-step bend of G# on beat 3 in bar 4</c>.</summary>
/// <param name="Target">The note, in any octave.</param>
/// <param name="How">How it is reached; null for any way.</param>
/// <param name="Beat">The beat, from 1; null for any strong beat.</param>
/// <param name="String">The string; null for any.</param>
/// <param name="Bars">Each of these bars has the note; null for one bar, whichever.</param>
public sealed record AimRule(NoteName Target, Approach? How = null, int? Beat = null, StringNumber? String = null, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => "aim " + Target + (String is { } number ? $" on string {number}" : "") + (How is null ? "" : $" {How}")
        + (Beat is { } beat ? " on beat " + Number(beat) : "");
}

/// <summary>What not to play: <c>avoid Bb, open strings, leaps over a fifth</c>.</summary>
/// <param name="What">At least one.</param>
/// <param name="Bars">The bars it is for; null for all.</param>
public sealed record AvoidRule(ValueList<Avoided> What, StretchBars? Bars = null) : RoadMapRule(Bars)
{
    protected override string Words => "avoid " + string.Join(", ", What);
}

/// <summary>The last note: <c>end D on string 3 by a slide from below, held</c>.</summary>
/// <param name="Target">The note, in any octave.</param>
/// <param name="How">How it is reached; null for any way.</param>
/// <param name="String">The string; null for any.</param>
/// <param name="IsHeld">True when it sounds to the end of the stretch.</param>
public sealed record EndRule(NoteName Target, Approach? How = null, StringNumber? String = null, bool IsHeld = false) : RoadMapRule((StretchBars?)null)
{
    protected override string Words => "end " + Target + (String is { } number ? $" on string {number}" : "") + (How is null ? "" : $" {How}") + (IsHeld ? ", held" : "");
}
