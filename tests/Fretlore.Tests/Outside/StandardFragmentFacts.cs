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

    [Theory]
    [InlineData("fret-element-frame")]
    [InlineData("fingering-element-frame")]
    public void Frame_StandsAtItsChord_AndItsDiagramIsNamedAsLeftOut(string name)
    {
        var made = Imported.Measures(Fragment(name) + Imported.Note("A", 2, 16, "whole", 5, 0));
        Assert.Equal("A", made.Song.Parts[0].Bars[0].Strands[0].Events[0].ChordSymbol);
        Assert.Contains("Chord diagrams are not carried over.", Imported.Text(made.Remarks), StringComparison.Ordinal);
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
