using CsCheck;

namespace Fretlore.Tests.Syntax;

/// <summary>Sheets in every state of untidiness, nearly all of them free of errors.</summary>
internal static class FormatInputs
{
    private static readonly Gen<string> Gap = Gen.Frequency(
        (20, Gen.Const(" ")), (3, Gen.Const("   ")), (4, Gen.Const("\n  ")), (1, Gen.Const("\n\n    ")), (1, Gen.Const("  -- a remark\n  ")),
        (1, Gen.Const("\n-- at the margin\n   ")), (1, Gen.Const("\r\n\t")));

    private static readonly Gen<string> Leaf = Gen.OneOf(
        "5", "4,6,4", "7@5", "x", "[7 7 9]", "[5  .  6 ]", "#lift", "roll#lift!", "R", "=", "=-", "17+wh20cv", "5;", "|", "||", "Q", "ESS", "E:3", "@2", "@6-4",
        "pm on", "pm  off", "(meter 7/8)", "( Q=96 )", "\"slowly\"", "furnace", "furnace  as sounded times 3,", "rest 8", "again", "furnace times 3",
        "pick #lift{E 52 3 =}", "pick   [7 7 9] {  1 }", "bass{ @6 H 0|0 }", "bass{0}");

    private static readonly Gen<string> Music = Gen.Recursive<string>((depth, inner) => depth > 3
        ? Leaf
        : Gen.Frequency(
            (12, Leaf),
            (1, Gen.Select(Gen.OneOf("pm{", "let {", "du{", "by pima{", "upbeat{", "times 2{"), inner, (word, music) => word + music + "}")),
            (1, Gen.Select(inner, inner, inner, (a, b, c) => $"times  3{{{a} on 1 , 2{{{b}}} on 3{{ {c} }}}}")),
            (8, Gen.Select(inner, Gap, inner, (a, gap, b) => a + gap + b))));

    private static readonly Gen<string> Run = Gen.Select(Music, Gap).Array[1, 12].Select(items => string.Concat(items.Select(i => i.Item1 + i.Item2)));

    private static readonly Gen<string> Block = Gen.OneOf<string>(
        Gen.Select(Gap, Run, (gap, music) => $"riff furnace\n  {music}\n"),
        Run.Select(music => $"riff tail\n  meter   7/8\n  {music}\n"),
        Gen.Select(Run, Run, (a, b) => $"riff turn = furnace with bar 2: {a}\n  with bars 3 - 4:\n  {b} without last bar\n"),
        Gen.Select(Run, Run, (a, b) => $"section Verse  2 like Verse\n  key  D dorian\n  lead {a}\n  rhythm   {b}\n"),
        Gen.OneOf(
            "shape lift [7 7 7 9 . .]\n", "shape  b [0 . 0]\n", "title  A  Song\n", "tempo Q=96\n", "-- a remark\n", "  -- an indented remark\n", "\n", "\n\n",
            "lesson\n step \"One\" teach furnace at 60%\n  budget 5:00\n  step \"Two\" say \"x\"\n", "roadmap way\n  scale A  dorian\n may use furnace\n"));

    public static readonly Gen<string> Sheets = Block.Array[1, 6]
        .Select(blocks => "part lead  \"Lead\" sound  driven\npart rhythm capo 2\n  tuning E2 A2\n" + string.Concat(blocks));
}
