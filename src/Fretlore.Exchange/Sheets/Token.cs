using System.Collections.Immutable;

namespace Fretlore.Exchange.Sheets;

/// <summary>Spans in the order of <see cref="Token.Needs"/>.</summary>
internal enum SpanWord : byte
{
    Pm,
    Let,
    Trem,
    Arm,
    Wah,
    Cresc,
    Dim,
}

/// <summary>Whether a token has to stand in a span.</summary>
internal enum Need : byte
{
    /// <summary>It makes no difference.</summary>
    Any,
    Must,
    MustNot,
}

/// <summary>A piece of a line of music that no span can begin or end within.</summary>
internal sealed record Token
{
    /// <summary>Time, place, words and changes before it, without a blank at the end.</summary>
    public string Prefix { get; init; } = "";

    /// <summary>The comma or semicolon that joins it to the token before; it then stands without a blank where it can.</summary>
    public string Joint { get; init; } = "";

    public required string Text { get; init; }

    /// <summary>The text with palm mute as a mark, where that differs.</summary>
    public string? Muted { get; init; }

    /// <summary>A semicolon after it: the next one is glided to and picked.</summary>
    public string Suffix { get; init; } = "";

    public ImmutableArray<Need> Needs { get; init; } = NoNeeds;

    /// <summary>Fingers of the picking hand for each picked event; null where none is said; empty where nothing is picked.</summary>
    public string? Fingers { get; init; } = "";

    /// <summary>What stands between the braces of a strand beside the main one.</summary>
    public ImmutableArray<Token> Inner { get; init; } = [];

    public bool IsBarLine { get; init; }

    public static ImmutableArray<Need> NoNeeds { get; } = [.. Enumerable.Repeat(Need.Any, Enum.GetValues<SpanWord>().Length)];

    public static Token BarLine(bool isDouble) => new() { Text = isDouble ? "||" : "|", IsBarLine = true };

    /// <summary>What the whole token needs: a strand that must not be in a span somewhere must not be in it as a whole.</summary>
    public Need NeedOf(SpanWord word)
    {
        if (Inner.IsEmpty) return Needs[(int)word];
        return Inner.Any(t => t.NeedOf(word) == Need.MustNot) ? Need.MustNot : Need.Any;
    }

    /// <summary>True when fingers in force around it would be used up or said of its notes.</summary>
    public bool StopsFingers => Inner.IsEmpty ? Fingers is null : Inner.Any(t => t.Fingers is null or { Length: > 0 });
}
