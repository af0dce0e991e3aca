using System.Reflection;
using System.Text.RegularExpressions;
using Fretlore.Syntax;

namespace Fretlore.Tests.Syntax;

/// <summary>Every finding of the parser once, with the place it points to; and what holds for all of them.</summary>
public partial class DiagnosticFacts
{
    private const string Riff = "riff a-riff\n  ";
    private const string TwoParts = "part lead\npart bed\n";

    /// <summary>A finding's code and a sheet that shows it alone.</summary>
    public static TheoryData<string, string> Shown => new()
    {
        { "FL1001", "⟦⟧" },
        { "FL1001", "⟦⟧  \n-- nothing but a remark\n" },
        { "FL1003", Riff + "@1 Q 5 ⟦“⟧slowly" },
        { "FL1010", "⟦rif⟧ furnace\n  @1 Q 5" },
        { "FL1011", "title Song\n⟦}⟧\n" },
        { "FL1012", "  ⟦@1 Q 5⟧\n" },
        { "FL1013", "shape lift [7 7 7] ⟦9 . .⟧\n" },
        { "FL1014", "⟦riff⟧\n  @1 Q 5" },
        { "FL1014", "⟦section⟧\n" },
        { "FL1015", "riff ⟦Furnace⟧\n  @1 Q 5" },
        { "FL1015", "riff ⟦a⟧\n  @1 Q 5" },
        { "FL1016", "riff ⟦d5⟧\n  @1 Q 5" },
        { "FL1016", "riff ⟦t12b⟧\n  @1 Q 5" },
        { "FL1016", "riff ⟦xvm⟧\n  @1 Q 5" },
        { "FL1017", "riff ⟦again⟧\n  @1 Q 5" },
        { "FL1017", "riff ⟦dud⟧\n  @1 Q 5" },
        { "FL1018", "part lead\n  ⟦tunning⟧ E2 A2" },
        { "FL1018", "lesson\n  ⟦stop⟧ \"One\"" },
        { "FL1019", "⟦shape lift⟧\n" },
        { "FL1020", "riff ⟦furnace⟧\n\ntitle Song" },
        { "FL1021", "riff turn ⟦=⟧ with bar 2: W 0" },
        { "FL1022", "riff turn = furnace ⟦without⟧" },
        { "FL1023", "riff turn = furnace ⟦with bar 2⟧ W 0" },
        { "FL1024", "section Verse 2 ⟦like⟧\n" },
        { "FL1025", TwoParts + "section Verse\n  ⟦laed⟧ rest 8" },
        { "FL1026", TwoParts + "section Verse\n  ⟦@⟧1 Q 5" },
        { "FL1027", Riff + "@1 Q ⟦57575⟧" },
        { "FL1028", "⟦recording⟧\n  bar 1 at 0:00.5" },
        { "FL1040", Riff + "⟦pm⟧{ @1 Q 5\n\ntitle Song" },
        { "FL1040", Riff + "⟦times⟧ 2{ @1 Q 5 on 1{ 5 }" },
        { "FL1041", Riff + "@1 Q ⟦[⟧7 7 9 | Q 5" },
        { "FL1042", Riff + "⟦(⟧meter 7/8\n  @1 Q 5" },
        { "FL1043", Riff + "⟦\"⟧slowly\n  @1 Q 5" },
        { "FL1044", Riff + "⟦{⟧ @1 Q 5 }" },
        { "FL1045", Riff + "⟦ptm⟧{ @1 Q 5 }" },
        { "FL1046", Riff + "⟦times⟧ 2 @1 Q 5" },
        { "FL1047", Riff + "⟦by⟧{ @1 Q 5 }" },
        { "FL1048", Riff + "⟦times⟧{ @1 Q 5 }" },
        { "FL1048", Riff + "furnace ⟦times⟧" },
        { "FL1049", Riff + "times 2{ @1 Q 5 ⟦on⟧{ 5 } }" },
        { "FL1050", Riff + "@1 Q 5 ⟦on⟧ 1{ 5 }" },
        { "FL1051", Riff + "times 2{ @1 Q 5 on 1{ 5 } ⟦7⟧ }" },
        { "FL1052", Riff + "⟦pick⟧ { }" },
        { "FL1053", Riff + "pick #lift{ E 5⟦:⟧ }" },
        { "FL1054", Riff + "pick #lift{ E 5 ⟦lift⟧ }" },
        { "FL1055", Riff + string.Concat(Enumerable.Repeat("pm{ ", 64)) + "pm⟦{⟧ 0 }" + new string('}', 64) },
        { "FL1056", Riff + "furnace ⟦as⟧" },
        { "FL1057", Riff + "⟦roadmap⟧ descent" },
        { "FL1058", Riff + "@1 Q ⟦pm⟧ 5" },
        { "FL1058", Riff + "@1 Q 5 ⟦tempo⟧" },
        { "FL1060", Riff + "@1 Q 4⟦,⟧ 6" },
        { "FL1060", Riff + "@1 Q ⟦;⟧ 6" },
        { "FL1061", Riff + "@1 Q 5;⟦lo⟧;7" },
        { "FL1062", Riff + "@1 Q ⟦+h⟧ 7" },
        { "FL1063", Riff + "@1 Q ⟦#⟧ 7" },
        { "FL1064", Riff + "@1 Q 17⟦:⟧ 7" },
        { "FL1065", Riff + "⟦@⟧ Q 7" },
        { "FL1073", Riff + "@1 Q 5⟦~⟧ 7" },
        { "FL1066", Riff + "@1 Q [7]⟦@⟧5" },
        { "FL1067", Riff + "@1 Q [7⟦@5⟧]" },
        { "FL1068", Riff + "@1 E⟦:⟧ 7" },
        { "FL1068", Riff + "@1 E:3⟦/⟧ 7" },
        { "FL1069", Riff + "@1 ⟦Q...⟧ 7" },
        { "FL1070", Riff + "⟦()⟧ @1 Q 7" },
        { "FL1071", Riff + "@1 ⟦Q⟧7" },
        { "FL1071", Riff + "@1 Q ⟦7⟧R" },
        { "FL1072", Riff + "@1 Q ⟦d⟧ 7" },
        { "FL1072", Riff + "@1 Q ⟦g⟧ 7" },
        { "FL1080", Riff + "@1 Q 7 ⟦}⟧ 7" },
        { "FL1081", Riff + "@1 Q 7 ⟦]⟧ 7" },
        { "FL1082", Riff + "@1 Q 7 ⟦)⟧ 7" },
        { "FL1083", Riff + "@1 Q 7⟦k⟧ 7" },
        { "FL1084", Riff + "@1 Q 7 ⟦%⟧ 7" },
    };

    [Theory]
    [MemberData(nameof(Shown))]
    public void Finding_PointsToItsPlace_AndComesAlone(string code, string marked)
    {
        var (text, span) = MarkedText.From(marked);
        var found = Assert.Single(Sheet.Parse(text).Diagnostics);
        Assert.Equal((code, span), (found.Code, found.Span));
    }

    [Fact]
    public void ManyFindings_AreCutOffWithAWord()
    {
        var found = Sheet.Parse(Riff + string.Concat(Enumerable.Repeat("% ", 500))).Diagnostics;
        Assert.Equal(101, found.Length);
        Assert.Equal("FL1002", found[^1].Code);
    }

    [Fact]
    public void EveryFinding_HasACodeOfItsOwn_AndATest()
    {
        var codes = Factories.Select(CodeOf).ToList();
        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.Equal(codes.Order(), Shown.Select(row => row.Data.Item1).Append("FL1002").Distinct().Order());
    }

    [Fact]
    public void EveryFinding_SpeaksInWholeSentences_AndSaysWhatToDo() => Assert.All(Factories, factory =>
    {
        var found = Make(factory);
        Assert.Matches("^FL1[0-9]{3}$", found.Code);
        Assert.Matches(WholeSentence(), found.Message);
        Assert.Matches(WholeSentence(), found.Remedy);
    });

    [Theory]
    [InlineData("rif furnace", "`riff`")]
    [InlineData("Riff furnace", "`riff`")]
    [InlineData("tunign E2", "`tuning`")]
    [InlineData("riff furnace\n  @1 Q ptm{ 5 }", "`pm`")]
    [InlineData("part lead\n  tuing E2", "`tuning`")]
    [InlineData("part lead\npart bed\nsection A\n  laed rest 8", "`lead`")]
    public void NearMiss_GetsASuggestion(string text, string suggestion) =>
        Assert.Contains($"Perhaps {suggestion} was meant.", Sheet.Parse(text).Diagnostics[0].Remedy);

    private static IEnumerable<MethodInfo> Factories => typeof(SyntaxDiagnostics)
        .GetMethods(BindingFlags.Public | BindingFlags.Static).Where(m => m.ReturnType == typeof(Diagnostic));

    private static string CodeOf(MethodInfo factory) => Make(factory).Code;

    private static Diagnostic Make(MethodInfo factory) => (Diagnostic)factory.Invoke(null, [.. factory.GetParameters().Select(Any)])!;

    private static object? Any(ParameterInfo parameter) => parameter.ParameterType switch
    {
        var t when t == typeof(string) => parameter.Name == "suggestion" ? null : "word",
        var t when t == typeof(IEnumerable<string>) => new[] { "lead", "bed" },
        var t => Activator.CreateInstance(t),
    };

    [GeneratedRegex(@"^[`A-Z][^\n]*[.]$")]
    private static partial Regex WholeSentence();
}
