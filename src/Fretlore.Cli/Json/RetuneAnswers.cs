namespace Fretlore.Cli.Json;

/// <summary>What <c>retune --json</c> prints; the sheet only where it is not written to a file.</summary>
internal sealed record RetuneJson(
    string Tuning, int Semitones, IReadOnlyList<RetunedPartLine> Parts, IReadOnlyList<RetunedRiffLine> Riffs, IReadOnlyList<RetuneOfferLine> Offers,
    IReadOnlyList<string> Remarks, IReadOnlyList<DiagnosticLine> Diagnostics, string? Sheet);

/// <summary>A part: its tuning and capo now (the strings null where it covers all), how hard it was and is, and what was lost.</summary>
internal sealed record RetunedPartLine(string Name, string Tuning, int Capo, string? CapoStrings, bool Retuned, string Before, string After, IReadOnlyList<LossOfBar> Losses);

/// <summary>A riff that no part plays.</summary>
internal sealed record RetunedRiffLine(string Name, IReadOnlyList<LossOfBar> Losses);

/// <summary>One thing lost; the bar by its printed number.</summary>
internal sealed record LossOfBar(int Bar, string Kind, string Text);

/// <summary>A way to lose less; the capo null where it stays.</summary>
internal sealed record RetuneOfferLine(int Semitones, int? Capo, int Losses);
