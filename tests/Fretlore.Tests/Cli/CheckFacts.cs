using System.Text.Json;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore check</c>.</summary>
public sealed class CheckFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void AGoodSheet_Answers0()
    {
        desktop.Run("new", "ash.lore");
        Assert.Equal(0, desktop.Run("check", "ash.lore"));
        Assert.Equal("ash.lore: nothing found\n", desktop.Out);
    }

    [Fact]
    public void Findings_AsJson_HaveExactlyThePromisedFields()
    {
        desktop.Write("ash.lore", "title Ash\nrif main\n  @6 Q 0 0 0 0 |\n");
        Assert.Equal(1, desktop.Run("check", "ash.lore", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.Equal(["diagnostics"], json.RootElement.EnumerateObject().Select(p => p.Name));
        var findings = json.RootElement.GetProperty("diagnostics").EnumerateArray().ToList();
        Assert.NotEmpty(findings);
        Assert.All(findings, finding =>
        {
            Assert.Equal(
                ["code", "severity", "line", "column", "length", "message", "remedy"], finding.EnumerateObject().Select(p => p.Name));
            Assert.Matches("^FL[0-9]{4}$", finding.GetProperty("code").GetString());
            Assert.Contains(finding.GetProperty("severity").GetString(), (string[])["error", "warning", "hint"]);
            Assert.True(finding.GetProperty("line").GetInt32() >= 1);
            Assert.True(finding.GetProperty("column").GetInt32() >= 1);
            Assert.NotEmpty(finding.GetProperty("message").GetString()!);
            Assert.NotEmpty(finding.GetProperty("remedy").GetString()!);
        });
        Assert.Contains(findings, f => f.GetProperty("line").GetInt32() == 2 && f.GetProperty("column").GetInt32() == 1);
    }

    [Fact]
    public void WhatNoHandCanDo_IsAWarning_AtItsPlace()
    {
        desktop.Write("ash.lore", "title Ash\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 90\n\nriff far\n  @6-1 W [1 . . . . 9] |\n\nsection All\n  @6 W 5 |\n");
        Assert.Equal(0, desktop.Run("check", "ash.lore"));
        Assert.Contains("ash.lore:6:11 warning FL4001 ", desktop.Out, StringComparison.Ordinal);
        Assert.EndsWith("ash.lore: 1 warning\n", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AFinding_IsShownWithItsLineAMarkerAndARemedy()
    {
        desktop.Write("ash.lore", "title Ash\nrif main\n");
        Assert.Equal(1, desktop.Run("check", "ash.lore"));
        Assert.Matches(@"ash\.lore:2:1 error FL\d{4} .+\n    rif main\n    \^\^\^\n  .+\n", desktop.Out);
    }

    [Fact]
    public void AFinding_IsColouredOnATerminal_AndReadsTheSameWithoutColours()
    {
        using var coloured = new Desktop { Colours = true };
        foreach (var place in (Desktop[])[desktop, coloured])
        {
            place.Write("ash.lore", "title Ash\nrif [main]\n");
            Assert.Equal(1, place.Run("check", "ash.lore"));
        }
        Assert.Contains("\u001b[", coloured.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b", desktop.Out, StringComparison.Ordinal);
        var bare = System.Text.RegularExpressions.Regex.Replace(coloured.Out, "\u001b\\[[0-9;]*m", "");
        Assert.Equal(desktop.Out, bare);
    }

    [Fact]
    public void ASheetsEscapeSequences_DoNotReachTheTerminal()
    {
        desktop.Write("ash.lore", "title Ash\nrif \u001b[31mred\u0007\n");
        desktop.Run("check", "ash.lore");
        Assert.DoesNotContain('\u001b', desktop.Out);
        Assert.DoesNotContain('\u0007', desktop.Out);
    }

    [Fact]
    public void TheStandardInput_IsReadForADash()
    {
        Assert.Equal(1, desktop.RunWith("rif main\n"u8.ToArray(), "check", "-"));
        Assert.StartsWith("-:1:1 ", desktop.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nowhere.lore", "FL0001")]
    [InlineData("no/where.lore", "FL0001")]
    [InlineData(".", "FL0002")]
    public void ASheetThatIsNotThere_IsWrongUse_WithLineColumnAndRemedy(string path, string code)
    {
        Assert.Equal(2, desktop.Run("check", path));
        Assert.StartsWith($"{path}:1:1 error {code} ", desktop.Out, StringComparison.Ordinal);
        Assert.Equal(2, desktop.Run("check", path, "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.Equal(code, json.RootElement.GetProperty("diagnostics")[0].GetProperty("code").GetString());
    }

    [Fact]
    public void ANameThatNoFileCanHave_IsWrongUse() => Assert.Equal(2, desktop.Run("check", "a\0b.lore"));

    public void Dispose() => desktop.Dispose();
}
