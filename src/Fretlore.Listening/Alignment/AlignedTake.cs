using System.Collections.Immutable;

namespace Fretlore.Listening.Alignment;

/// <summary>When a bar is heard in a take.</summary>
/// <param name="Index">Index into the performed song's bars.</param>
/// <param name="Seconds">From the take's start; null where the take has begun already, or is over.</param>
/// <param name="Unlike">How unlike the sheet the bar sounds: about 0.5 for the same music, 1 and more for other music; 0 where it is not in the take.</param>
public readonly record struct HeardBar(int Index, double? Seconds, double Unlike);

/// <summary>A take lined up with the sheet.</summary>
/// <param name="Bars">Every bar in the order played.</param>
/// <param name="Unlike">How unlike the sheet the take sounds all in all.</param>
/// <param name="TuningCents">How far it is tuned above A4 = 440.</param>
public sealed record AlignedTake(ImmutableArray<HeardBar> Bars, double Unlike, double TuningCents);
