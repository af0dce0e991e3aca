using System.Collections.Immutable;
using Fretlore.Sound.Strings;

namespace Fretlore.Sound.Rigs;

/// <summary>Stages that bend the wave.</summary>
/// <param name="First">Gain into the first stage.</param>
/// <param name="Second">Gain into the second; 0 for none.</param>
/// <param name="Lean">How far the first stage's rest lies beside its middle: even partials.</param>
/// <param name="Doublings">How often the sample rate is doubled: 3 is eight times.</param>
internal readonly record struct DriveStages(double First, double Second, double Lean, int Doublings);

/// <summary>Repeats of the sound.</summary>
/// <param name="Seconds">Between repeats.</param>
/// <param name="Again">Share of each that is repeated.</param>
/// <param name="Level">Level of the first.</param>
internal readonly record struct Repeats(double Seconds, double Again, double Level);

/// <summary>What a string is heard through, named by what it does.</summary>
internal sealed record Rig
{
    public required string Name { get; init; }

    /// <summary>Other words sheets use for it.</summary>
    public ImmutableArray<string> AlsoCalled { get; init; } = [];

    public required BodyLoss Body { get; init; }

    /// <summary>Share of the open string between bridge and pickup; 0 hears the bridge.</summary>
    public required double PickupPlace { get; init; }

    /// <summary>Filters before the drive.</summary>
    public ImmutableArray<Tone> Before { get; init; } = [];

    public DriveStages? Drive { get; init; }

    /// <summary>Tone stack and cabinet or body, after the drive.</summary>
    public required ImmutableArray<Tone> After { get; init; }

    /// <summary>How many times the part is recorded, left and right: 1 or 2.</summary>
    public int Takes { get; init; } = 1;

    /// <summary>Where a part that is recorded once stands when others are about: 0 middle, 1 to a side.</summary>
    public double Aside { get; init; }

    /// <summary>How much of what sounds shakes the strings that nobody plays; 0 where the hands keep those still, as they do before a driven rig.</summary>
    public double Sympathy { get; init; }

    public double Room { get; init; }

    public Repeats? Repeats { get; init; }

    /// <summary>Gain at the end, so that rigs are about equally loud.</summary>
    public required double Level { get; init; }
}
