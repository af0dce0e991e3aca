using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;

namespace Fretlore.Hands.Placing;

/// <summary>What sounds on one string on the way through a line.</summary>
/// <param name="Note">Index of the note; -1 for none.</param>
/// <param name="Step">Its place in its chain.</param>
/// <param name="Candidate">Where the chain is played.</param>
internal readonly record struct OnString(int Note, int Step, PlaceCandidate? Candidate)
{
    public static OnString Nothing => new(-1, 0, null);

    public NotePlace Place => Candidate!.Places[Step];
}

/// <summary>A way through the moments so far: where everything is that sounds, and the hand that holds it.</summary>
internal sealed class PlacePath
{
    public required PlacePath? Before { get; init; }

    /// <summary>The hand; null before it had anything to hold, and after what no hand holds.</summary>
    public required Grip? Grip { get; init; }

    public required double Cost { get; init; }

    /// <summary>Indexed by string number; index 0 is not used.</summary>
    public required OnString[] Strings { get; init; }

    /// <summary>The candidates chosen for the chains that began at this moment.</summary>
    public required (int Chain, PlaceCandidate Candidate)[] Chosen { get; init; }

    /// <summary>When the hand last had something new to hold, in seconds; and from when it could leave it.</summary>
    public required double LastStart { get; init; }

    public required double LeftAt { get; init; }

    /// <summary>The string last struck, the lowest of a chord; 0 before any was.</summary>
    public required int Picked { get; init; }
}

/// <summary>One way to place what begins at a moment, given what sounds on.</summary>
internal sealed class PlaceWay
{
    public required (int Chain, PlaceCandidate Candidate)[] Chosen { get; init; }

    public required double Cost { get; init; }

    /// <summary>What is on each string from now on.</summary>
    public required OnString[] Strings { get; init; }

    /// <summary>Where each press of the hold comes from: how, and on which string.</summary>
    public required (Joining Kind, int String)[] Links { get; init; }

    /// <summary>The ways to hold it: none where there is nothing to hold or no hand can.</summary>
    public required Grip[] Grips { get; init; }

    public required bool IsHeldByNoHand { get; init; }

    /// <summary>Until when the last of what is held lasts, in seconds.</summary>
    public required double LeftAt { get; init; }

    /// <summary>The cost with that of the easiest grip.</summary>
    public required double Total { get; init; }

    /// <summary>The lowest string struck anew; 0 where none is.</summary>
    public required int Picked { get; init; }
}
