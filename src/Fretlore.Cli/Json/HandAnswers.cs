namespace Fretlore.Cli.Json;

/// <summary>What <c>hands --json</c> prints.</summary>
internal sealed record HandsAnswer(
    string Hand, IReadOnlyList<LineOfHands> Parts, IReadOnlyList<LineOfHands> Riffs, IReadOnlyList<DiagnosticLine> Diagnostics, string Caution);

/// <summary>A part or a riff; costs in points of effort, rounded to hundredths.</summary>
internal sealed record LineOfHands(string Name, string Difficulty, double Cost, IReadOnlyList<BarOfHands> Bars);

/// <summary>One written bar: its printed number, how hard it is and why, and each note's place and finger.</summary>
internal sealed record BarOfHands(
    int Bar, string Difficulty, double Cost, double Seconds, IReadOnlyDictionary<string, double> Efforts, IReadOnlyList<string> Reasons, IReadOnlyList<NoteOfHands> Notes);

/// <summary>One note; <c>at</c> in quarter notes from the bar's start as a fraction, the finger 1 to 4, 0 for the thumb, null where none is needed.</summary>
internal sealed record NoteOfHands(string At, int String, int Fret, int? Finger, int? Position);
