namespace Fretlore.Syntax;

/// <summary>Kinds of token.</summary>
public enum TokenKind
{
    /// <summary>Letters, digits, <c>.</c>, <c>-</c>: names, setting words and their values.</summary>
    Word,

    /// <summary>Digits only.</summary>
    Number,

    /// <summary>Text between double quotes, quotes included.</summary>
    Text,

    /// <summary>Capital letters that set the time, such as <c>ESS</c> or <c>Q.</c></summary>
    Time,

    /// <summary>A sign of the language: braces, brackets, <c>|</c>, <c>@</c>, joints, marks.</summary>
    Sign,

    /// <summary>Characters that belong to nothing.</summary>
    Stray,

    EndOfFile,
}
