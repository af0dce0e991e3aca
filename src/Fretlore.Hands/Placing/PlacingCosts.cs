namespace Fretlore.Hands.Placing;

/// <summary>What a choice of string and fret costs beside what the hand has to do for it, in the points of effort of <c>HandCosts</c>.</summary>
/// <remarks>Set by judgement and tried on the demo songs with their strings taken away, on scales and on open chords.</remarks>
internal static class PlacingCosts
{
    /// <summary>A stopped note, for each fret up the neck: players stay low where nothing calls them up.</summary>
    public const double PerFret = 0.035;

    /// <summary>An open string where nothing asks for one: it needs no finger, but can't be shaped either.</summary>
    public const double OpenString = 0.25;

    /// <summary>An open string among notes high up the neck, for each fret above the fourth that the hand stands at.</summary>
    public const double OpenStringPerFret = 0.06;

    /// <summary>A stroke on another string than the one before, for each string between, up to three.</summary>
    public const double StringCrossed = 0.1;

    /// <summary>A note that leaves the string it had.</summary>
    public const double AwayFromHome = 2;

    /// <summary>A note that leaves the very place it had, which the new neck has too.</summary>
    public const double AwayFromOwnPlace = 4;

    /// <summary>A note that leaves a place that was decided before.</summary>
    public const double AwayFromGiven = 1000;

    /// <summary>An open string that becomes a stopped one.</summary>
    public const double OpenLost = 0.5;

    /// <summary>An open string that sounded on under other notes and becomes a stopped one.</summary>
    public const double DroneLost = 2.5;

    /// <summary>A stopped string that becomes an open one.</summary>
    public const double Opened = 0.3;

    /// <summary>A note that rings, cut off by another on its string.</summary>
    public const double RingCut = 3;

    /// <summary>A natural harmonic over another fret of the string, for each node further from the octave.</summary>
    public const double OtherNode = 0.2;

    /// <summary>A natural harmonic played as a touched one, with both hands.</summary>
    public const double TouchedInstead = 8;

    /// <summary>A note moved by an octave.</summary>
    public const double Octave = 30;

    /// <summary>Each further note that is moved with it, on the same string.</summary>
    public const double OctaveOfJoined = 5;

    /// <summary>A note left out whose name sounds on in another octave, and that is not the lowest.</summary>
    public const double DoubledNoteLost = 25;

    /// <summary>The lowest note left out where its name sounds on in another octave.</summary>
    public const double DoubledBassLost = 45;

    /// <summary>Any other note between the lowest and the highest left out.</summary>
    public const double InnerNoteLost = 55;

    /// <summary>The lowest or the highest note left out, or one alone.</summary>
    public const double NoteLost = 60;

    /// <summary>Notes kept together that no hand can hold.</summary>
    public const double NotHeld = 30;

    /// <summary>How many ways of placing a moment's notes are looked at for each way of the moments before.</summary>
    public const int MostWays = 16;

    /// <summary>How many steps of a search for ways are taken once one is found.</summary>
    public const int MostTries = 4000;

    /// <summary>How many ways through the moments so far are kept.</summary>
    public const int MostPaths = 24;
}
