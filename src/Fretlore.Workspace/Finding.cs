using Fretlore.Syntax;

namespace Fretlore.Workspace;

/// <summary>A diagnostic as people look for it: by line and column.</summary>
/// <param name="Code">Stable, <c>FL</c> and four digits.</param>
/// <param name="Severity">Error, warning or hint.</param>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1, in UTF-16 units as editors count.</param>
/// <param name="Length">UTF-16 units; may reach past the line's end.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="SourceLine">The line it is in, without its end.</param>
public sealed record Finding(
    string Code, Severity Severity, int Line, int Column, int Length, string Message, string Remedy, string SourceLine)
{
    public static Finding Of(Diagnostic diagnostic, SourceText text)
    {
        var start = Math.Clamp(diagnostic.Span.Start, 0, text.Text.Length);
        var place = text.PositionOf(start);
        var lineStart = start - (place.Column - 1);
        var rest = text.Text.AsSpan(lineStart);
        var end = rest.IndexOfAny('\r', '\n');
        return new Finding(
            diagnostic.Code, diagnostic.Severity, place.Line, place.Column, diagnostic.Span.Length,
            diagnostic.Message, diagnostic.Remedy, (end < 0 ? rest : rest[..end]).ToString());
    }
}
