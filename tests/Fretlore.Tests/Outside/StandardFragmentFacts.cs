using Fretlore.Exchange.Reports;
using Fretlore.Score;
using Fretlore.Tests.Exchange.Import;

namespace Fretlore.Tests.Outside;

/// <summary>The W3C's example fragments for guitar, each put into a score: they come in as their pages in the MusicXML 4.0 reference say.</summary>
/// <remarks>Source: https://www.w3.org/2021/06/musicxml40/musicxml-reference/examples/, one page a fragment.</remarks>
public sealed class StandardFragmentFacts
{
    [Fact]
    public void Tap_IsTappedByTheHandItSays() => Assert.Equal(
        [(1, 14, Attack.Tap), (1, 7, Attack.Picked), (1, 10, Attack.HammerFromNowhere)],
        Notes(Inside(Fragment("tap-element"))).Select(n => (n.String.Value, n.Fret.Number, n.Attack)));

    [Fact]
    public void WithBar_IsADipOfASemitone() => Assert.Equal([100, 100], Notes(Inside(Fragment("with-bar-element"))).Select(n => n.DipCents));

    [Fact]
    public void Bend_IsAWholeStep() => Assert.Equal(new Bend(0, [200]), Notes(Noted(Fragment("bend-element"))).Single().Bend);

    [Fact]
    public void PreBend_IsAWholeStepBeforeTheNoteIsStruck() => Assert.Equal(new Bend(200, []), Notes(Fragment("pre-bend-element")).Single().Bend);

    [Fact]
    public void Release_ComesBackFromAWholeStep() => Assert.Equal(new Bend(0, [200, 0]), Notes(Fragment("release-element")).Single().Bend);

    [Fact]
    public void Pluck_IsTheThumb()
    {
        var item = Imported.Measures(Inside(Fragment("pluck-element"))).Song.Parts[0].Bars[0].Strands[0].Events[0];
        Assert.Equal([(5, 3), (2, 1)], item.Notes.Select(n => (n.String.Value, n.Fret.Number)));
        Assert.Equal('m', item.PickingFinger);
    }

    [Fact]
    public void Slide_IsAGlideToTheSecondNote()
    {
        var notes = Notes(Inside(Fragment("slide-element")));
        Assert.Equal([67, 71], notes.Select(n => n.Sounding.Midi));
        Assert.Equal([Attack.Picked, Attack.PickedGlide], notes.Select(n => n.Attack));
    }

    [Fact]
    public void Technical_IsStringFourFretFive() => Assert.Equal([(4, 5)], Notes(Fragment("technical-element-tablature")).Select(n => (n.String.Value, n.Fret.Number)));

    [Theory]
    [InlineData("capo-element", 5)]
    [InlineData("staff-tuning-element", 0)]
    public void StaffDetails_AreTheUsualTuningAndItsCapo(string name, int capo)
    {
        var neck = Imported.Measures($"<attributes>{Fragment(name)}</attributes>" + Imported.Note("E", 4, 16, "whole", 3, 4)).Song.Parts[0].Neck;
        Assert.Equal(("E2 A2 D3 G3 B3 E4", capo), (neck.Tuning.ToString(), neck.Capo));
    }

    [Fact]
    public void StaffType_IsATablatureBesideAnotherStaff() => Assert.Equal(
        "E2 A2 D3 G3 B3 E4", Imported.Measures(Fragment("staff-type-element") + Imported.Note("E", 4, 8, "whole", 3, 4)).Song.Parts[0].Neck.Tuning.ToString());

    [Fact]
    public void Frame_WithFingers_IsAShapeNamedByItsChord() => Assert.Equal("a [x 0 2f2 2f3 2f4 0]", Shape(Fragment("fingering-element-frame")));

    /// <remarks>The barre at fret 12 is the index finger's; the one at 14 does not say its finger.</remarks>
    [Fact]
    public void Frame_WithABarre_IsHeldByTheIndexFinger() => Assert.Equal("a [x 12f1 14 14 14 12f1]", Shape(Fragment("fret-element-frame")));

    [Fact]
    public void Barre_OfAFrameByItself_IsThatOfTheChordsFrame() => Assert.Equal(
        Shape(Fragment("fret-element-frame")), Shape($"<harmony><root><root-step>A</root-step></root><kind>major</kind>{Fragment("barre-element")}</harmony>"));

    [Fact]
    public void TabClef_MakesTheStaffATablature()
    {
        var made = Imported.Measures(
            $"<attributes><staves>2</staves><clef number=\"1\"><sign>G</sign><line>2</line></clef>{Fragment("tab-clef").Replace("<clef>", "<clef number=\"2\">", StringComparison.Ordinal)}</attributes>"
            + OnStaff(1) + "<backup><duration>16</duration></backup>" + OnStaff(2));
        Assert.Equal([(3, 7)], made.Song.Parts.Single().Bars[0].Notes.Select(n => (n.String.Value, n.Fret.Number)));
        Assert.Contains("The staff beside the tablature is taken to be the same music.", Imported.Text(made.Remarks), StringComparison.Ordinal);
    }

    private static string OnStaff(int staff) =>
        $"<note><pitch><step>D</step><octave>4</octave></pitch><duration>16</duration><voice>{staff}</voice><type>whole</type><staff>{staff}</staff>"
        + (staff == 2 ? "<notations><technical><string>3</string><fret>7</fret></technical></notations>" : "") + "</note>";

    // As a sheet defines it, once it has gone through one.
    private static string Shape(string harmony)
    {
        var made = Imported.Measures(harmony + Imported.Note("A", 2, 16, "whole", 5, 0));
        Assert.DoesNotContain("diagram", string.Join('\n', made.Remarks.Where(r => r.Kind == RemarkKind.LeftOut)), StringComparison.Ordinal);
        var shape = Imported.ThroughSheet(made.Song, out _).Shapes.Single();
        return $"{shape.Name} [{string.Join(' ', shape.Shape.LowToHigh.Select((fret, i) => fret is null ? "x" : fret.ToString() + (shape.Fingers[i] is { } finger ? $"f{(int)finger}" : "")))}]";
    }

    [Theory]
    [InlineData("golpe-element", "golpe")]
    [InlineData("fingernails-element", "fingernails")]
    public void WhatASheetHasNoPlaceFor_IsNamed(string name, string sign) => Assert.Contains(
        $"The sign {sign} is not carried over.", Imported.Text(Imported.Measures(Noted(Fragment(name))).Remarks), StringComparison.Ordinal);

    private static string Fragment(string name)
    {
        var path = Repository.Check($"musicxml/examples/{name}.fragment.xml");
        Assert.SkipWhen(path is null, "The check values are not beside the checkout.");
        return File.ReadAllText(path);
    }

    private static string Inside(string measure) => measure[(measure.IndexOf('>', StringComparison.Ordinal) + 1)..measure.LastIndexOf("</measure>", StringComparison.Ordinal)];

    private static string Noted(string notations) =>
        "<note><pitch><step>F</step><octave>3</octave></pitch><duration>16</duration><voice>1</voice><type>whole</type>"
        + (notations.StartsWith("<notations", StringComparison.Ordinal) ? notations : $"<notations>{notations}</notations>") + "</note>";

    private static List<Note> Notes(string measure) => [.. Imported.Measures(measure).Song.Parts[0].Bars[0].Notes];
}
