namespace Fretlore.Cli.Json;

/// <summary>What <c>strings --json</c> prints; tensions rounded to hundredths, lengths to thousandths.</summary>
internal sealed record StringsAnswer(
    IReadOnlyList<StringLine> Strings, double LoadLbf, double LoadN, double? BeforeLoadLbf, string? Before, string? Feel, IReadOnlyList<RemarkLine> Remarks);

/// <summary>One string, the highest first. What can't be computed for wound strings is null.</summary>
internal sealed record StringLine(
    int String, string Pitch, string Gauge, string Make, double TensionLbf, double TensionN, double? BeforeLbf, double? BeforeN,
    double? ShareOfBreaking, double? Inharmonicity, double? WholeStepBendN, double? WholeStepBendMm);

/// <summary>One warning.</summary>
internal sealed record RemarkLine(string Concern, string Text);
