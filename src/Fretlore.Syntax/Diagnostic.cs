namespace Fretlore.Syntax;

/// <summary>How bad a finding is.</summary>
public enum Severity
{
    /// <summary>Worth knowing; the sheet is fine.</summary>
    Hint,

    /// <summary>Probably not what was meant; everything is still made.</summary>
    Warning,

    /// <summary>The sheet can't be used until it is mended.</summary>
    Error,
}

/// <summary>One finding about a sheet: where, what is wrong, and what to do.</summary>
/// <param name="Code">Stable: <c>FL</c> and four digits; the first digit is the area (1 syntax, 2 binding, 3 reading, 4 hands).</param>
/// <param name="Severity">Error, warning or hint.</param>
/// <param name="Span">Where in the sheet.</param>
/// <param name="Message">What is wrong, a whole sentence.</param>
/// <param name="Remedy">What to do about it, a whole sentence.</param>
/// <remarks>Made only by named factories, one class an area.</remarks>
public sealed record Diagnostic(string Code, Severity Severity, TextSpan Span, string Message, string Remedy);
