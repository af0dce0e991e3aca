using System.Collections.Immutable;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Jumps as MusicXML has them: words to read, and an attribute of <c>sound</c> to play by.</summary>
internal static class JumpNames
{
    private static readonly ImmutableArray<(Jump Jump, string Words, string Attribute, string Value)> All =
    [
        (Jump.Fine, "Fine", "fine", "yes"),
        (Jump.ToCoda, "To Coda", "tocoda", "coda"),
        (Jump.DaCapo, "D.C.", "dacapo", "yes"),
        (Jump.DaCapoAlFine, "D.C. al Fine", "dacapo", "yes"),
        (Jump.DaCapoAlCoda, "D.C. al Coda", "dacapo", "yes"),
        (Jump.DalSegno, "D.S.", "dalsegno", "segno"),
        (Jump.DalSegnoAlFine, "D.S. al Fine", "dalsegno", "segno"),
        (Jump.DalSegnoAlCoda, "D.S. al Coda", "dalsegno", "segno"),
    ];

    public static (string Words, string Attribute, string Value) Of(Jump jump)
    {
        var (_, words, attribute, value) = All.First(a => a.Jump == jump);
        return (words, attribute, value);
    }

    /// <summary>The jump of an attribute; what it ends at is said in words only.</summary>
    /// <param name="attribute">Of a <c>sound</c> element.</param>
    /// <param name="words">What is printed with it.</param>
    public static Jump? Read(string attribute, string words)
    {
        var said = Plain(words);
        Jump? plain = null;
        foreach (var (jump, known, name, _) in All)
        {
            if (name != attribute) continue;
            if (Plain(known) == said) return jump;
            plain ??= jump;
        }
        return plain;
    }

    // "D. S. al coda" and "D.S. Al Coda" are one.
    private static string Plain(string words) => string.Concat(words.Where(char.IsLetter)).ToUpperInvariant();
}
