using System.Collections.Immutable;

namespace Fretlore.Syntax;

/// <summary>A flat run of items; bar lines are items among them, so that a span may cross them.</summary>
public sealed class MusicSyntax(ImmutableArray<ItemSyntax> items) : SyntaxNode(Run(items))
{
    public ImmutableArray<ItemSyntax> Items { get; } = items;
}

/// <summary>Anything that stands in music.</summary>
public abstract class ItemSyntax : SyntaxNode
{
    private protected ItemSyntax(params ReadOnlySpan<object?> children) : base(children)
    {
    }
}

/// <summary><c>|</c> or <c>||</c>.</summary>
public sealed class BarLineSyntax(SyntaxToken sign) : ItemSyntax(sign)
{
    public SyntaxToken Sign { get; } = sign;
}

/// <summary>The time from here on: <c>ESS</c>, <c>Q.</c>, <c>E:3</c>, <c>S:5/4</c>.</summary>
public sealed class TimeSyntax(SyntaxToken values, SyntaxToken? colon, SyntaxToken? count, SyntaxToken? slash, SyntaxToken? inTimeOf)
    : ItemSyntax(values, colon, count, slash, inTimeOf)
{
    /// <summary>One or more value letters, each with up to two dots.</summary>
    public SyntaxToken Values { get; } = values;

    public SyntaxToken? Count { get; } = count;

    public SyntaxToken? InTimeOf { get; } = inTimeOf;
}

/// <summary>The place from here on, or of one note: <c>@2</c>, <c>@654</c>, <c>@6-4</c>.</summary>
public sealed class WhereSyntax(SyntaxToken at, SyntaxToken strings, SyntaxToken? dash = null, SyntaxToken? to = null)
    : ItemSyntax(at, strings, dash, to)
{
    /// <summary>String digits, or the first of a range.</summary>
    public SyntaxToken Strings { get; } = strings;

    public SyntaxToken? To { get; } = to;
}

/// <summary><c>pm{ … }</c>, <c>let{ … }</c>, <c>by pima{ … }</c>, <c>du{ … }</c>: items within, bar lines included.</summary>
/// <remarks>A group with a word the language does not know, or with none, is kept as a span too; the parser has then reported it.</remarks>
public sealed class SpanSyntax(SyntaxToken word, SyntaxToken? letters, SyntaxToken open, ImmutableArray<ItemSyntax> items, SyntaxToken close)
    : ItemSyntax(word, letters, open, Run(items), close)
{
    public SyntaxToken Word { get; } = word;

    /// <summary>The picking fingers after <c>by</c>.</summary>
    public SyntaxToken? Letters { get; } = letters;

    public ImmutableArray<ItemSyntax> Items { get; } = items;
}

/// <summary><c>pm on</c>, <c>pm off</c>.</summary>
public sealed class SwitchSyntax(SyntaxToken word, SyntaxToken onOrOff) : ItemSyntax(word, onOrOff)
{
    public SyntaxToken Word { get; } = word;

    public bool IsOn { get; } = onOrOff.Text == "on";
}

/// <summary><c>bass{ … }</c>, <c>drone{ … }</c>, <c>top{ … }</c>: a strand that starts here beside the main one.</summary>
public sealed class StrandSyntax(SyntaxToken word, SyntaxToken open, ImmutableArray<ItemSyntax> items, SyntaxToken close)
    : ItemSyntax(word, open, Run(items), close)
{
    public SyntaxToken Word { get; } = word;

    public ImmutableArray<ItemSyntax> Items { get; } = items;
}

/// <summary><c>upbeat{ … }</c>: a pickup bar.</summary>
public sealed class UpbeatSyntax(SyntaxToken word, SyntaxToken open, ImmutableArray<ItemSyntax> items, SyntaxToken close)
    : ItemSyntax(word, open, Run(items), close)
{
    public SyntaxToken Word { get; } = word;

    public ImmutableArray<ItemSyntax> Items { get; } = items;
}

/// <summary><c>times 2{ … on 1{ … } on 2{ … } }</c>.</summary>
public sealed class RepeatSyntax(
    SyntaxToken word, SyntaxToken count, SyntaxToken open, ImmutableArray<ItemSyntax> items, ImmutableArray<EndingSyntax> endings,
    ImmutableArray<ItemSyntax> late, SyntaxToken close)
    : ItemSyntax(word, count, open, items, endings, late, close)
{
    public SyntaxToken Word { get; } = word;

    public SyntaxToken Count { get; } = count;

    public ImmutableArray<ItemSyntax> Items { get; } = items;

    public ImmutableArray<EndingSyntax> Endings { get; } = endings;

    /// <summary>Music between or after the endings, where none may stand: reported by the parser, kept, and without meaning.</summary>
    public ImmutableArray<ItemSyntax> Late { get; } = late;
}

/// <summary><c>on 1{ … }</c>, <c>on 1,2{ … }</c>, <c>on 1-3{ … }</c>.</summary>
public sealed class EndingSyntax(
    SyntaxToken word, ImmutableArray<SyntaxToken> passes, SyntaxToken open, ImmutableArray<ItemSyntax> items, SyntaxToken close)
    : SyntaxNode(word, passes, open, Run(items), close)
{
    public SyntaxToken Word { get; } = word;

    /// <summary>Numbers with the commas and dashes between them.</summary>
    public ImmutableArray<SyntaxToken> Passes { get; } = passes;

    public ImmutableArray<ItemSyntax> Items { get; } = items;
}

/// <summary>A riff played here: <c>furnace</c>, <c>furnace as sounded times 3</c>, with a comma after it or not.</summary>
public sealed class PlaySyntax(
    SyntaxToken name, SyntaxToken? asWord, SyntaxToken? mode, SyntaxToken? times, SyntaxToken? count, SyntaxToken? comma)
    : ItemSyntax(name, asWord, mode, times, count, comma)
{
    public SyntaxToken Name { get; } = name;

    /// <summary><c>fretted</c> or <c>sounded</c>, or null.</summary>
    public SyntaxToken? Mode { get; } = mode;

    public SyntaxToken? Count { get; } = count;
}

/// <summary><c>roadmap descent 6 bars</c>.</summary>
public sealed class RoadMapUseSyntax(SyntaxToken word, SyntaxToken name, SyntaxToken count, SyntaxToken bars, SyntaxToken? comma)
    : ItemSyntax(word, name, count, bars, comma)
{
    public SyntaxToken Name { get; } = name;

    public SyntaxToken Count { get; } = count;
}

/// <summary><c>rest</c>, <c>rest 8</c>, with a comma after it or not.</summary>
public sealed class RestBarsSyntax(SyntaxToken word, SyntaxToken? count, SyntaxToken? comma = null) : ItemSyntax(word, count, comma)
{
    public SyntaxToken? Count { get; } = count;
}

/// <summary><c>again</c>, <c>again 2</c>, with a comma after it or not.</summary>
public sealed class AgainSyntax(SyntaxToken word, SyntaxToken? count, SyntaxToken? comma = null) : ItemSyntax(word, count, comma)
{
    public SyntaxToken? Count { get; } = count;
}

/// <summary>A change between parentheses: <c>(meter 7/8 2+2+3)</c>, <c>(Q = 96)</c>, <c>(key D dorian)</c>, <c>(f)</c>.</summary>
public sealed class ChangeSyntax(SyntaxToken open, ImmutableArray<SyntaxToken> tokens, SyntaxToken close) : ItemSyntax(open, tokens, close)
{
    public ImmutableArray<SyntaxToken> Tokens { get; } = tokens;
}

/// <summary>Words above the staff, in double quotes.</summary>
public sealed class WordsSyntax(SyntaxToken text) : ItemSyntax(text)
{
    public SyntaxToken Text { get; } = text;
}

/// <summary><c>pick #c{ E 52 3 2 1 }</c>: a held shape picked string by string.</summary>
public sealed class PickSyntax(SyntaxToken word, SoundSyntax shape, SyntaxToken open, ImmutableArray<SyntaxNode> items, SyntaxToken close)
    : ItemSyntax(word, shape, open, Run(items), close)
{
    public SyntaxToken Word { get; } = word;

    /// <summary>A <see cref="NamedShapeSyntax"/> or a <see cref="ChordSyntax"/>.</summary>
    public SoundSyntax Shape { get; } = shape;

    /// <summary>Each a <see cref="TimeSyntax"/>, <see cref="PickStringsSyntax"/>, <see cref="RestSyntax"/>, <see cref="HoldSyntax"/> or stray.</summary>
    public ImmutableArray<SyntaxNode> Items { get; } = items;
}

/// <summary>Strings plucked together in a pick group: <c>52</c>, <c>3</c>, <c>5:7</c> (string 5 at fret 7 from here on).</summary>
public sealed class PickStringsSyntax(SyntaxToken strings, SyntaxToken? colon, SyntaxToken? fret) : SyntaxNode(strings, colon, fret)
{
    public SyntaxToken Strings { get; } = strings;

    public SyntaxToken? Fret { get; } = fret;
}

/// <summary>Characters that mean nothing here, kept as they are.</summary>
public sealed class StrayItemSyntax(SyntaxToken token) : ItemSyntax(token)
{
    public SyntaxToken Token { get; } = token;
}
