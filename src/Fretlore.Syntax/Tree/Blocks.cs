using System.Collections.Immutable;

namespace Fretlore.Syntax;

/// <summary>A whole sheet: blocks, each beginning at the start of a line, and the end of the file.</summary>
public sealed class SheetSyntax(ImmutableArray<BlockSyntax> blocks, SyntaxToken endOfFile) : SyntaxNode(blocks, endOfFile)
{
    public ImmutableArray<BlockSyntax> Blocks { get; } = blocks;

    public SyntaxToken EndOfFile { get; } = endOfFile;
}

/// <summary>What stands at the start of a line, with its indented lines.</summary>
public abstract class BlockSyntax : SyntaxNode
{
    private protected BlockSyntax(params ReadOnlySpan<object?> children) : base(children)
    {
    }
}

/// <summary>A word and its values on one line: <c>tuning E2 A2 …</c>, <c>tempo Q = 96</c>, <c>budget 6:00</c>.</summary>
/// <remarks>Stands at the top of a sheet, or within a part, section, road map or lesson.</remarks>
public sealed class SettingSyntax(SyntaxToken word, ImmutableArray<SyntaxToken> values) : BlockSyntax(word, values)
{
    public SyntaxToken Word { get; } = word;

    public ImmutableArray<SyntaxToken> Values { get; } = values;

    /// <summary>The values as one text, with one blank where there are any: the words of a title.</summary>
    public string ValueText => Values.Length == 0
        ? ""
        : Values[0].Text + string.Concat(Values.Skip(1).Select(v => v.LeadingTrivia.Length == 0 ? v.Text : " " + v.Text));
}

/// <summary><c>part NAME "Title" setting …</c>; settings go on the same line or on indented ones.</summary>
public sealed class PartSyntax(SyntaxToken keyword, SyntaxToken name, SyntaxToken? title, ImmutableArray<SettingSyntax> settings)
    : BlockSyntax(keyword, name, title, settings)
{
    public SyntaxToken Name { get; } = name;

    public SyntaxToken? Title { get; } = title;

    public ImmutableArray<SettingSyntax> Settings { get; } = settings;
}

/// <summary><c>shape NAME [7 7 7 9 . .]</c></summary>
public sealed class ShapeSyntax(SyntaxToken keyword, SyntaxToken name, ChordSyntax? frets) : BlockSyntax(keyword, name, frets)
{
    public SyntaxToken Name { get; } = name;

    public ChordSyntax? Frets { get; } = frets;
}

/// <summary><c>riff NAME</c> and its music on indented lines, or <c>riff NAME = BASE with bar 2: …</c></summary>
public sealed class RiffSyntax(
    SyntaxToken keyword, SyntaxToken name, ImmutableArray<SettingSyntax> settings, VariationSyntax? variation, MusicSyntax music)
    : BlockSyntax(keyword, name, settings, variation, music)
{
    public SyntaxToken Name { get; } = name;

    /// <summary><c>tuning …</c>, <c>meter …</c> and the like, each on a line of its own before the music.</summary>
    public ImmutableArray<SettingSyntax> Settings { get; } = settings;

    public VariationSyntax? Variation { get; } = variation;

    /// <summary>The riff's own music; empty in a variation, whose music is in its edits.</summary>
    public MusicSyntax Music { get; } = music;
}

/// <summary><c>= BASE</c> with its edits.</summary>
public sealed class VariationSyntax(SyntaxToken equals, SyntaxToken baseName, ImmutableArray<EditSyntax> edits)
    : SyntaxNode(equals, baseName, edits)
{
    public SyntaxToken BaseName { get; } = baseName;

    public ImmutableArray<EditSyntax> Edits { get; } = edits;
}

/// <summary><c>with bar 2: …</c>, <c>with bars 2-3: …</c>, <c>with last bar: …</c>, <c>without bar 4</c>.</summary>
public sealed class EditSyntax(
    SyntaxToken withOrWithout, SyntaxToken? last, SyntaxToken barOrBars, SyntaxToken? from, SyntaxToken? dash, SyntaxToken? to,
    SyntaxToken? colon, MusicSyntax? music)
    : SyntaxNode(withOrWithout, last, barOrBars, from, dash, to, colon, music)
{
    public bool Removes { get; } = withOrWithout.Text == "without";

    public SyntaxToken? Last { get; } = last;

    public SyntaxToken? From { get; } = from;

    public SyntaxToken? To { get; } = to;

    /// <summary>The replacement; null when bars are taken away.</summary>
    public MusicSyntax? Music { get; } = music;
}

/// <summary><c>section NAME</c> (or <c>section NAME like OTHER</c>), then settings and one line of music for each part.</summary>
public sealed class SectionSyntax(
    SyntaxToken keyword, ImmutableArray<SyntaxToken> name, SyntaxToken? like, ImmutableArray<SyntaxToken> likeName,
    ImmutableArray<SyntaxNode> body)
    : BlockSyntax(keyword, name, like, likeName, body)
{
    /// <summary>One or more words, or a quoted text.</summary>
    public ImmutableArray<SyntaxToken> Name { get; } = name;

    /// <summary>The section whose lines are taken where this one has none of its own; empty without <c>like</c>.</summary>
    public ImmutableArray<SyntaxToken> LikeName { get; } = likeName;

    /// <summary>Settings and part lines in the order written.</summary>
    public ImmutableArray<SyntaxNode> Body { get; } = body;

    public ImmutableArray<SettingSyntax> Settings { get; } = [.. body.OfType<SettingSyntax>()];

    public ImmutableArray<PartLineSyntax> Lines { get; } = [.. body.OfType<PartLineSyntax>()];
}

/// <summary>A part's name and what it plays in a section.</summary>
/// <remarks>
/// The name is missing where the sheet has one part or none, which then needs no naming. A name no part has is reported by the parser.
/// </remarks>
public sealed class PartLineSyntax(SyntaxToken partName, MusicSyntax music) : SyntaxNode(partName, music)
{
    public SyntaxToken PartName { get; } = partName;

    public MusicSyntax Music { get; } = music;
}

/// <summary><c>roadmap NAME</c> and its rules, one a line.</summary>
public sealed class RoadMapSyntax(SyntaxToken keyword, SyntaxToken name, ImmutableArray<SettingSyntax> rules)
    : BlockSyntax(keyword, name, rules)
{
    public SyntaxToken Name { get; } = name;

    public ImmutableArray<SettingSyntax> Rules { get; } = rules;
}

/// <summary><c>lesson</c> with <c>budget</c> and <c>step</c> lines.</summary>
public sealed class LessonSyntax(SyntaxToken keyword, ImmutableArray<SettingSyntax> settings) : BlockSyntax(keyword, settings)
{
    public SyntaxToken Keyword { get; } = keyword;

    public ImmutableArray<SettingSyntax> Settings { get; } = settings;
}

/// <summary><c>recording "NAME"</c> and the times of its bars, one a line.</summary>
public sealed class RecordingSyntax(SyntaxToken keyword, SyntaxToken name, ImmutableArray<SettingSyntax> bars)
    : BlockSyntax(keyword, name, bars)
{
    /// <summary>The file's name, in quotes; missing when there is none.</summary>
    public SyntaxToken Name { get; } = name;

    public ImmutableArray<SettingSyntax> Bars { get; } = bars;
}

/// <summary>Lines that are no block of the language; kept as they are.</summary>
public sealed class StrayBlockSyntax(ImmutableArray<SyntaxToken> tokens) : BlockSyntax(tokens)
{
    public ImmutableArray<SyntaxToken> Tokens { get; } = tokens;
}
