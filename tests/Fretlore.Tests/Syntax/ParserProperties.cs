using CsCheck;
using Fretlore.Syntax;

namespace Fretlore.Tests.Syntax;

/// <summary>The parser is total and loses nothing: what any text, however broken, must hold.</summary>
public class ParserProperties
{
    private const string Signs = "0123456789 \n\t|@{}[]()\"#+-*!?'=,;:.xtgduvmfRWHQESYZ";

    private static readonly string[] Fragments =
    [
        "riff a\n", "  pm{", "times 2{", "on 1{", "}", "[7 7", "\"text", "(meter", "part b \"B\"\n", "section C\n", "shape s [1 2]\n", "pick #c{",
        "-- note\n", " --", "\r\n", "as sounded", "roadmap r 2 bars", "lo;", ";hi", "E:3 ", "with bar 2:", "bass{", "“", "\0", "\uD800", "\u00A0",
    ];

    private static readonly Gen<string> AnyText = Gen.OneOf<string>(
        Gen.String,
        Gen.String[Gen.Char[Signs], 0, 200],
        Gen.OneOf(Fragments).Array[0, 60].Select(string.Concat),
        Gen.Select(Gen.OneOf(Fragments).Array[0, 40], Gen.String[Gen.Char[Signs], 0, 100]).Select((f, s) => "riff a\n  " + string.Concat(f) + s));

    internal static Gen<string> MutatedSheet => Mutated(SheetSamples.Furnace, SheetSamples.EverySign);

    /// <summary>One of the sheets with a few stretches of it replaced.</summary>
    internal static Gen<string> Mutated(params string[] sheets)
    {
        var edit = Gen.Select(Gen.Int[0, 5000], Gen.Int[0, 30], Gen.OneOf<string>(Gen.String[Gen.Char[Signs], 0, 6], Gen.OneOf(Fragments)));
        return Gen.Select(Gen.OneOf(sheets), edit.Array[1, 4], (text, edits) =>
        {
            foreach (var (at, length, insert) in edits)
            {
                var start = at % (text.Length + 1);
                text = text[..start] + insert + text[Math.Min(text.Length, start + length)..];
            }
            return text;
        });
    }

    [Fact]
    public void AnyText_IsKeptWhole() => AnyText.Sample(HoldsAll);

    [Fact]
    public void AnyMutatedSheet_IsKeptWhole() => MutatedSheet.Sample(HoldsAll);

    private static void HoldsAll(string text)
    {
        var parsed = Sheet.Parse(text);
        Assert.Equal(text, parsed.Root.ToFullString());
        Assert.All(parsed.Diagnostics, d => Assert.InRange(d.Span.Start, 0, text.Length));
        Assert.All(parsed.Diagnostics, d => Assert.InRange(d.Span.End, d.Span.Start, text.Length));
        CheckSpans(parsed.Root, text);
    }

    /// <summary>Each token lies where it says, and each node reaches from its first token to its last.</summary>
    private static void CheckSpans(SyntaxNode root, string text)
    {
        foreach (var node in root.DescendantsAndSelf())
        {
            foreach (var token in node.Children.OfType<SyntaxToken>())
            {
                Assert.Equal(token.Text, text.Substring(token.Span.Start, token.Span.Length));
            }
            Assert.InRange(node.Span.Start, 0, text.Length);
            Assert.InRange(node.Span.End, node.Span.Start, text.Length);
        }
    }
}
