using CsCheck;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout.Reuse;
using Fretlore.Guitar;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Tests.Engraving.Layout;

public class RelayoutFacts
{
    private static readonly FontLibrary Fonts = new();

    // Songs of every sign, of one part to three, on paper, a phone and a slide, with and without planned fingers.
    [Fact]
    public void PagesAfterAnEditOfABar_AreThoseOfAWholeLayout()
    {
        Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 1000], Gen.Int[0, 6], Gen.Int[0, 23]).Sample(
            (seed, bar, kind, way) =>
            {
                var song = RandomSongs.Of(seed);
                var edited = Edited(song, bar % song.Bars.Count, kind, seed);
                var preset = PaperPreset.All[way % PaperPreset.All.Length];
                var options = new PageOptions { Show = (Notation)(way / 4 % 3), Degrees = way % 2 == 1, Paper = preset.Paper, StaffSpace = preset.StaffSpace };
                if (way >= 12) options = options with { Hands = HandSignOptions.Printed };
                AssertSameAsWhole(song, edited, options, way >= 12);
            },
            iter: Soak.Songs(60), threads: 2);
    }

    [Fact]
    public void EditOfABar_KeepsTheOtherSystems()
    {
        var song = StudySongs.TwoGuitars(48);
        var left = Pages(song, new PageOptions(), EarlierLayout.Empty).Layout;
        var after = Pages(song.WithBar(20, b => b with { EndLine = BarLine.Double }), new PageOptions(), left).Layout!;
        var fresh = after.Systems.Where(s => !left!.Systems.Contains(s)).ToArray();
        Assert.InRange(fresh.Length, 1, 2);
        Assert.Contains(fresh, s => s.Geometry.Has(20));
    }

    [Fact]
    public void LayoutOfAnotherPaper_LeavesNothingToTakeOver()
    {
        var song = StudySongs.TwoGuitars(24);
        var left = Pages(song, new PageOptions { Paper = Paper.Letter }, EarlierLayout.Empty).Layout;
        Assert.Equal(Pages(song, new PageOptions()).Document, Pages(song, new PageOptions(), left).Document);
    }

    private static void AssertSameAsWhole(Song song, Song edited, PageOptions options, bool withHands)
    {
        SongHands? Hands(Song of) => withHands ? HandPlanner.Plan(of) : null;
        var engraver = new PageEngraver(Fonts.Music, Fonts.Texts);
        if (engraver.Engrave(song, SongReader.Read(song), options, Hands(song), EarlierLayout.Empty) is not EngravingResult.Pages { Layout: var left }) return;
        var (reading, hands) = (SongReader.Read(edited), Hands(edited));
        var whole = engraver.Engrave(edited, reading, options, hands);
        var quick = engraver.Engrave(edited, reading, options, hands, left);
        Assert.Equal((whole as EngravingResult.Pages)?.Document, (quick as EngravingResult.Pages)?.Document);
        // And back again, from a layout that has systems of both.
        if (quick is not EngravingResult.Pages { Layout: var mixed }) return;
        var back = engraver.Engrave(song, SongReader.Read(song), options, Hands(song), mixed);
        Assert.Equal(((EngravingResult.Pages)engraver.Engrave(song, SongReader.Read(song), options, Hands(song))).Document, ((EngravingResult.Pages)back).Document);
    }

    private static Song Edited(Song song, int bar, int kind, int seed) => kind switch
    {
        0 => song.WithBar(bar, b => b with { EndLine = b.EndLine == BarLine.Double ? BarLine.Single : BarLine.Double }),
        1 => song.WithBar(bar, b => b with { Key = new Key(NoteName.FromFifths(seed % 5), Mode.Ionian, true) }),
        2 => song.WithPartBar(seed % song.Parts.Count, bar, b => b with { Strands = [], Repeats = 0 }).Renumbered(),
        3 => song.WithPartBar(seed % song.Parts.Count, bar, b => b with { Strands = song.Parts[seed % song.Parts.Count].Bars[(bar + 1) % song.Bars.Count].Strands, Repeats = 0 }).Renumbered(),
        4 => WithNotes(song, bar, seed, n => n with { Fret = new Fret(n.Fret.Number == 0 ? 1 : n.Fret.Number - 1) }),
        5 => WithNotes(song, bar, seed, n => n with { Bend = null, IsHeldOn = false }),
        _ => WithNotes(song, bar, seed, n => n with { Attack = Attack.Picked, Finger = Finger.Ring }),
    };

    private static Song WithNotes(Song song, int bar, int seed, Func<Note, Note> change) => song.WithPartBar(seed % song.Parts.Count, bar, b => b with
    {
        Strands = b.Strands.Items.Select(strand => strand with
        {
            Events = strand.Events.Items.Select(e => e with { Notes = e.Notes.Items.Select(change).ToValueList() }).ToValueList(),
        }).ToValueList(),
    });

    private static EngravingResult.Pages Pages(Song song, PageOptions options, EarlierLayout? earlier = null) =>
        Assert.IsType<EngravingResult.Pages>(new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, Studies.SpelledByKey(song), options, null, earlier));
}
