using System.Collections.Immutable;

namespace Fretlore.Syntax;

/// <summary>A sheet's text as a tree, with what the parser found wrong.</summary>
/// <param name="Text">The source.</param>
/// <param name="Root">The lossless tree: its full string is the source's text.</param>
/// <param name="Diagnostics">In the order of the text.</param>
public sealed record ParsedSheet(SourceText Text, SheetSyntax Root, ImmutableArray<Diagnostic> Diagnostics);
