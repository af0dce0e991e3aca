namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>The words of a headline that stand for one thing each, to say and to understand.</summary>
internal static class HeadlineWords
{
    private static readonly (Playing Playing, string Words)[] Kinds =
    [
        (Playing.OneFinger, "one finger across"), (Playing.Pairs, "pairs"), (Playing.Shapes, "shapes:"), (Playing.SeveralStrings, "shapes of several strings"),
        (Playing.RingingLine, "a ringing line"), (Playing.LegatoLine, "a legato line"), (Playing.SingleNoteLine, "a single-note line"),
    ];

    private static readonly (Device Device, string Words)[] Devices =
    [
        (Device.Gallop, "the gallop"), (Device.Gallops, "the gallops"), (Device.PalmMutes, "the palm mutes"), (Device.Bend, "the bend"), (Device.Bends, "the bends"),
        (Device.Taps, "the taps"), (Device.Harmonics, "the harmonics"), (Device.Slides, "the slides"), (Device.Tuplets, "the tuplets"),
    ];

    public static string Of(Playing playing) => Array.Find(Kinds, k => k.Playing == playing).Words;

    public static string Of(Device device) => Array.Find(Devices, d => d.Device == device).Words;

    /// <summary>Every kind of playing with its words.</summary>
    public static IEnumerable<(Playing Playing, string Words)> AllPlaying => Kinds;

    /// <summary>Every device with its words.</summary>
    public static IEnumerable<(Device Device, string Words)> AllDevices => Devices;

    /// <summary>"bars two and four change", "bar two changes".</summary>
    public static string Changes(string bars, int count) => $"{bars} {(count == 1 ? "changes" : "change")}";
}
