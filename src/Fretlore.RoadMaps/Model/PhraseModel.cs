using System.Collections.Immutable;

namespace Fretlore.RoadMaps.Model;

/// <summary>What makes a line of notes a phrase: every weight of the search in one place, to be read and changed.</summary>
/// <remarks>
/// Costs are in bits: a choice that costs one bit more is made half as often. Shares are chances from 0 to 1. The figures are rules of the trade, set by ear on
/// the demo songs; where the song has phrases of its own, their habits count too (see <see cref="SongHabits"/>). Rules of a road map are no costs: they are
/// kept, whatever the weights.
/// </remarks>
public sealed record PhraseModel
{
    /// <summary>Cost of going 0, 1, 2 … 12 semitones up or down; further costs the last and <see cref="WiderLeap"/> a semitone.</summary>
    /// <remarks>Steps are the rule, thirds common, leaps rare: what melodies do (common practice).</remarks>
    public ImmutableArray<double> Intervals { get; init; } = [2.2, 1.2, 0, 0.4, 1.2, 1.2, 4.5, 2.5, 4.5, 4, 4, 6, 3.5];

    public double WiderLeap { get; init; } = 1;

    /// <summary>Notes of the song's own phrases that count as much as the figures here.</summary>
    public double TradeNotes { get; init; } = 60;

    /// <summary>Cost of a note twice in a row besides its interval's: it takes the way out of a line.</summary>
    public double Repeat { get; init; } = 1.2;

    /// <summary>Cost of turning round after a step: lines run on more than they turn.</summary>
    public double TurnAfterStep { get; init; } = 0.9;

    /// <summary>Cost of going on the same way after a leap: a leap is filled by going back.</summary>
    public double OnAfterLeap { get; init; } = 1.5;

    /// <summary>Cost of one leap after another.</summary>
    public double LeapAfterLeap { get; init; } = 1;

    /// <summary>From how many semitones on a step is a leap.</summary>
    public int Leap { get; init; } = 5;

    /// <summary>Cost of a note foreign to the chord on a strong beat, and elsewhere.</summary>
    public double StrongOutsideChord { get; init; } = 1.4;

    public double WeakOutsideChord { get; init; } = 0.2;

    /// <summary>Cost of each string that the picking hand skips, and of each fret beyond two that the line goes at once.</summary>
    public double SkippedString { get; init; } = 1.1;

    public double FarFret { get; init; } = 0.4;

    /// <summary>Cost of each semitone from the height the phrase is at by then.</summary>
    public double OffHeight { get; init; } = 0.22;

    /// <summary>Where the whole solo is tensest, as a share of its time; lines lie highest there where the rules leave them room.</summary>
    public double Climax { get; init; } = 0.7;

    /// <summary>Cost of a note that is not what the phrase answered has in its place.</summary>
    public double OtherThanEchoed { get; init; } = 3.5;

    /// <summary>Cost of landing on root, third, fifth and any other note at the end of a question, and of an answer.</summary>
    public ImmutableArray<double> QuestionLandings { get; init; } = [2.5, 1, 0, 0.8];

    public ImmutableArray<double> AnswerLandings { get; init; } = [0, 0.8, 1.2, 4];

    /// <summary>Cost of a phrase of 1, 2, 3, 4 bars.</summary>
    public ImmutableArray<double> PhraseBars { get; init; } = [1.8, 0, 2, 1.5];

    /// <summary>Cost of a phrase that goes on past a target in a bar before its last.</summary>
    public double PastTarget { get; init; } = 1.5;

    /// <summary>Chance that a phrase answers the one before it where their lengths agree, and that it moves it to another height instead.</summary>
    public double Answers { get; init; } = 0.7;

    public double Sequences { get; init; } = 0.3;

    /// <summary>Chance that a bar has the rhythm of the phrase's first bar.</summary>
    public double MotifAgain { get; init; } = 0.5;

    /// <summary>How many cells a phrase is mostly made of, and the cost of each other one in it.</summary>
    public int MotifCells { get; init; } = 2;

    public double OtherCell { get; init; } = 2.5;

    /// <summary>Cost of a phrase that is not as long as the one before: pairs can answer each other.</summary>
    public double OtherLength { get; init; } = 1.2;

    /// <summary>Chance that a phrase begins after its first beat.</summary>
    public double LateStart { get; init; } = 0.25;

    /// <summary>The least breath at the end of a phrase, in beats, and the least length of the note before it.</summary>
    public double Breath { get; init; } = 0.5;

    public double LandingNote { get; init; } = 0.5;

    /// <summary>Cost of a beat with a note more or less than the level asks for; with two it is four times that.</summary>
    public double OffDensity { get; init; } = 2.5;

    /// <summary>The rhythms there are where a road map names none, with their costs.</summary>
    public ImmutableArray<WeightedCell> Cells { get; init; } = TradeCells.All;

    /// <summary>Cost of leaving out the end of a rhythm cell within a phrase.</summary>
    public double CutCell { get; init; } = 3.5;

    /// <summary>Chance of a lick where one fits, at the highest level.</summary>
    public double Licks { get; init; } = 0.45;

    /// <summary>Chance that a lick's end is played another way.</summary>
    public double VariedLicks { get; init; } = 0.6;

    /// <summary>Cost of a bend where no rule asks for it, on a note long enough for one, and what is long enough, in seconds.</summary>
    public double Bend { get; init; } = 2.5;

    public double BendSeconds { get; init; } = 0.24;

    /// <summary>Chances at the highest level of joining neighbours on a string: hammered or pulled, slid.</summary>
    public double Legato { get; init; } = 0.35;

    public double Slide { get; init; } = 0.08;

    /// <summary>Chance of vibrato on a long note, and what is long, in seconds.</summary>
    public double Vibrato { get; init; } = 0.75;

    public double LongSeconds { get; init; } = 0.45;

    /// <summary>Notes a beat at the lowest level and at the highest, as shares of what the density's slowest and fastest value give.</summary>
    public double EasyDensity { get; init; } = 0.8;

    public double FullDensity { get; init; } = 0.8;

    /// <summary>Millimetres a second that the hand may have to go between two notes.</summary>
    public double HandSpeed { get; init; } = 1400;
}
