namespace Fretlore.Cli.Json;

/// <summary>What <c>align --json</c> prints.</summary>
/// <param name="Name">The file's name as the sheet says it.</param>
/// <param name="Unlike">How unlike the sheet the take sounds: about 0.3 to 0.6 for the same music, 0.7 and more for other music.</param>
/// <param name="TuningCents">How far it is tuned above A4 = 440.</param>
/// <param name="Bars">Every bar in the order played.</param>
internal sealed record AlignedTakeJson(string Name, double Unlike, double TuningCents, IReadOnlyList<AlignedBarLine> Bars);

/// <summary>A bar by its printed number and which time it is played.</summary>
/// <param name="Bar">The number.</param>
/// <param name="Time">From 1.</param>
/// <param name="Seconds">From the file's start; null where it is not in the take.</param>
/// <param name="Unlike">As for the whole take.</param>
internal sealed record AlignedBarLine(int Bar, int Time, double? Seconds, double Unlike);
