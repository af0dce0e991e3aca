using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Score;
using Fretlore.Sound.Strings;

namespace Fretlore.Sound.Rigs;

/// <summary>The rigs there are.</summary>
/// <remarks>All values are ours, and levels are measured: each plays the same phrase at about -20 LUFS.</remarks>
internal static class RigTable
{
    private static readonly ImmutableArray<Tone> Cabinet =
    [
        Tone.HighPass(75), Tone.Peak(115, 3, 1.2), Tone.Peak(420, -3, 0.9), Tone.Peak(2600, 4, 1.3), Tone.LowPass(5200, 0.54), Tone.LowPass(5200, 1.31),
    ];

    private static readonly Rig Clean = new()
    {
        Name = "clean",
        AlsoCalled = ["jazz", "warm"],
        Body = BodyLoss.Solid,
        PickupPlace = 0.16,
        Sympathy = 0.0003,
        Before = [Tone.HighPass(40)],
        Drive = new DriveStages(0.9, 0, 0.06, 1),
        After = [Tone.HighPass(60), Tone.Peak(120, 2, 1), Tone.HighShelf(2500, 3), Tone.LowPass(6500)],
        Aside = 0.35,
        Room = 0.16,
        Level = 0.376,
    };

    private static readonly Rig Edge = new()
    {
        Name = "edge",
        AlsoCalled = ["crunch"],
        Body = BodyLoss.Solid,
        PickupPlace = 0.12,
        Before = [Tone.HighPass(70), Tone.HighShelf(1800, 3), Tone.LowPass(9000)],
        Drive = new DriveStages(5, 0, 0.25, 2),
        After = [Tone.Peak(700, 2, 0.8), .. Cabinet],
        Aside = 0.35,
        Room = 0.12,
        Level = 0.151,
    };

    private static readonly Rig Driven = new()
    {
        Name = "driven",
        AlsoCalled = ["heavy"],
        Body = BodyLoss.Solid,
        PickupPlace = 0.07,
        // Little bass goes in, so that palm mutes stay tight; it is given back after the drive.
        Before = [Tone.HighPass(130), Tone.Peak(850, 5, 0.7), Tone.LowPass(6000)],
        Drive = new DriveStages(9, 4, 0.15, 3),
        After = [Tone.LowShelf(160, 5), Tone.Peak(520, -4, 0.9), .. Cabinet],
        Takes = 2,
        Room = 0.06,
        Level = 0.087,
    };

    private static readonly Rig Singing = new()
    {
        Name = "singing",
        AlsoCalled = ["lead"],
        Body = BodyLoss.Solid,
        PickupPlace = 0.15,
        Before = [Tone.HighPass(100), Tone.Peak(950, 5, 0.8), Tone.LowPass(5000)],
        Drive = new DriveStages(7, 4, 0.1, 3),
        After = [Tone.Peak(900, 3, 0.8), .. Cabinet, Tone.LowPass(4800)],
        Room = 0.2,
        Repeats = new Repeats(0.36, 0.28, 0.22),
        Level = 0.093,
    };

    private static readonly Rig Acoustic = new()
    {
        Name = "acoustic",
        AlsoCalled = ["steel", "nylon", "classical"],
        Body = BodyLoss.Hollow,
        PickupPlace = 0,
        Sympathy = 0.0008,
        After =
        [
            // The air in the body and the first modes of its top (Fletcher and Rossing give about 100, 200 and 400 Hz).
            Tone.HighPass(65), Tone.Peak(102, 6, 2.5), Tone.Peak(205, 5, 2.2), Tone.Peak(410, 3, 1.8), Tone.Peak(1300, -3, 0.8), Tone.HighShelf(3500, 4),
            Tone.LowPass(11_000),
        ],
        Aside = 0.35,
        Room = 0.22,
        Level = 0.450,
    };

    private static readonly Rig Bass = new()
    {
        Name = "bass",
        Body = BodyLoss.Solid,
        PickupPlace = 0.17,
        Before = [Tone.HighPass(28)],
        Drive = new DriveStages(1.6, 0, 0.1, 1),
        After = [Tone.HighPass(35), Tone.LowShelf(110, 3), Tone.Peak(800, 2, 0.8), Tone.LowPass(3800)],
        Room = 0.03,
        Level = 0.346,
    };

    public static ImmutableArray<Rig> All { get; } = [Clean, Edge, Driven, Singing, Acoustic, Bass];

    /// <summary>The rig with this name or another word for it; null when there is none.</summary>
    public static Rig? Find(string name) => All.FirstOrDefault(rig =>
        rig.Name.Equals(name, StringComparison.OrdinalIgnoreCase) || rig.AlsoCalled.Contains(name, StringComparer.OrdinalIgnoreCase));

    /// <summary>The rig of a part that names none: a bass when even its highest string is below D3, clean otherwise.</summary>
    public static Rig UsualFor(Part part) => part.Neck.StringCount > 0 && part.Neck.Tuning[new StringNumber(1)].Height.Midi < 50 ? Bass : Clean;
}
