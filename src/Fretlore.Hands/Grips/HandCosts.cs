using Fretlore.Score;

namespace Fretlore.Hands.Grips;

/// <summary>What each thing the fretting hand does costs, in points of effort; every number the search weighs is here.</summary>
/// <remarks>
/// Set by judgement and tried on everyday shapes and scales; one point is about the effort of a change of position by two frets at leisure. What is weighed follows
/// the literature on fingering by search (Sayegh 1989; Radicioni and Lombardo 2005; Heijink and Meulenbroek 2002): stretch along the neck, finger
/// strength, barres, changes of position and their time.
/// </remarks>
internal static class HandCosts
{
    /// <summary>A millimetre of stretch beyond what is at ease.</summary>
    public const double StretchPerMillimetre = 0.06;

    /// <summary>A finger squeezed a fret below its own place in the position.</summary>
    public const double CrampPerFret = 0.22;

    /// <summary>A finger reaching a fret out of the position, away from the others.</summary>
    public const double ReachOut = 0.45;

    /// <summary>The index finger reaching a fret back.</summary>
    public const double ReachBack = 1.0;

    /// <summary>Two fingers on one fret with the lower finger on the thinner string, against the slant of the hand.</summary>
    public const double AgainstTheSlant = 0.9;

    /// <summary>One finger lying across two strings.</summary>
    public const double Barre = 0.55;

    /// <summary>Each string a barre covers beyond two.</summary>
    public const double BarrePerString = 0.2;

    /// <summary>Each string beyond one of a barre at the first fret, where the nut makes the strings stiff; half of it at the second.</summary>
    public const double BarreNearNut = 0.1;

    /// <summary>Another finger at a barre's fret, beside it.</summary>
    public const double BarreBesideFinger = 0.35;

    /// <summary>A barre that ends beside an open string, from which the finger has to be kept away.</summary>
    public const double BarreBesideOpen = 0.8;

    /// <summary>A change of position, however small.</summary>
    public const double Shift = 0.6;

    /// <summary>Each millimetre of it.</summary>
    public const double ShiftPerMillimetre = 0.012;

    /// <summary>Millimetres a second at which a shift is still unhurried.</summary>
    public const double UnhurriedSpeed = 250;

    /// <summary>Each further <see cref="UnhurriedSpeed"/>.</summary>
    public const double Hurry = 0.35;

    /// <summary>The most that haste can cost.</summary>
    public const double MostHurry = 6;

    /// <summary>Share of a shift's cost that is left when a finger stays on its string and leads.</summary>
    public const double GuideFinger = 0.7;

    /// <summary>Share of a shift's cost that is left when all fingers stay on their strings and the shape moves as it is.</summary>
    public const double SameShape = 0.45;

    /// <summary>Share of a shift's cost that is left when the shift is a written glide.</summary>
    public const double Glide = 0.3;

    /// <summary>A finger that must jump to another string within the position.</summary>
    public const double Hop = 0.55;

    /// <summary>A finger that moves along its string within the position.</summary>
    public const double Slip = 0.6;

    /// <summary>A finger that rolls to the next string at the same fret.</summary>
    public const double Roll = 0.35;

    /// <summary>How many times dearer hops, slips and rolls are when there is next to no time; half as many at <see cref="ShortTime"/>, and ever fewer with more.</summary>
    public const double HopInHaste = 2.0;

    /// <summary>Seconds within which a hop is hard.</summary>
    public const double ShortTime = 0.15;

    /// <summary>The same note again with another finger.</summary>
    public const double OtherFingerOnSameNote = 1.0;

    /// <summary>A finger taken off a note that must sound on.</summary>
    public const double HeldNoteLost = 50;

    /// <summary>A finger taken off a note that is to ring.</summary>
    public const double RingingNoteLost = 3;

    /// <summary>A hammer-on or pull-off to the finger that is already down: it can't be.</summary>
    public const double LegatoWithOneFinger = 30;

    /// <summary>A change of position within a hammer-on or pull-off.</summary>
    public const double ShiftInLegato = 2.5;

    /// <summary>A glide that ends under another finger.</summary>
    public const double GlideToOtherFinger = 12;

    /// <summary>A finger put where its reach does not go, because the sheet says so.</summary>
    public const double BeyondReach = 25;

    /// <summary>Share of the last note that a player gives away to get to the next position.</summary>
    public const double LentShare = 0.25;

    /// <summary>Seconds a hand always has.</summary>
    public const double LeastTime = 0.03;

    /// <summary>A finger that presses a string: the weaker, the dearer.</summary>
    public static double Press(Finger finger) => finger switch
    {
        Finger.Thumb => 0.8,
        Finger.Index => 0.15,
        Finger.Middle => 0.2,
        Finger.Ring => 0.2,
        _ => 0.48,
    };

    /// <summary>A bend by a finger: the ring finger has two behind it to help.</summary>
    public static double Bend(Finger finger) => finger switch
    {
        Finger.Ring => 0,
        Finger.Middle => 0.5,
        Finger.Little => 1.2,
        Finger.Index => 1,
        _ => 5,
    };

    /// <summary>How many times dearer a barre is under another finger than the index.</summary>
    public static double BarreUnder(Finger finger) => finger switch
    {
        Finger.Index => 1,
        Finger.Ring => 1.6,
        _ => 4,
    };

    /// <summary>How many strings a finger can lie across; the index as many as there are.</summary>
    public static int MostBarred(Finger finger) => finger switch
    {
        Finger.Index => int.MaxValue,
        Finger.Ring => 4,
        Finger.Thumb => 1,
        _ => 2,
    };
}
