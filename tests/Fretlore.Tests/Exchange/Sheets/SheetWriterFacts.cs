using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Exchange.Sheets;

public sealed class SheetWriterFacts
{
    public static TheoryData<string> Demos => DemoSongs.Names;

    [Theory]
    [MemberData(nameof(Demos))]
    public void ADemoSong_WrittenAsASheet_IsTheSameSong(string name)
    {
        var song = DemoSongs.Load(name);
        var sheet = SheetWriter.Write(song, new SheetStyle(FindsRiffs: false));
        Assert.Empty(sheet.Remarks);
        SameSong.Same(SameSong.Written(song), SameSong.Written(Read(sheet.Text)), sheet.Text);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void ADemoSongWithoutItsRiffs_WrittenWithRiffsFound_SoundsTheSame(string name)
    {
        var song = DemoSongs.Load(name) with { Riffs = [], RiffUses = [], Lesson = null, RoadMaps = [], RoadMapUses = [] };
        song = song with { Parts = song.Parts.Select(p => p with { Bars = p.Bars.Select(b => b with { RoadMap = null }).ToValueList() }).ToValueList() };
        var sheet = SheetWriter.Write(song);
        Assert.Empty(sheet.Remarks);
        Assert.Contains("riff ", sheet.Text, StringComparison.Ordinal);
        var read = Read(sheet.Text);
        SameSong.Same(SameSong.Performed(song), SameSong.Performed(read), sheet.Text);
        Assert.Equal(song.Bars, read.Bars);
    }

    [Fact]
    public void AGeneratedSong_WrittenAsASheet_IsTheSameSong() => SheetGen.Valid(1500, 1000, song =>
    {
        var sheet = SheetWriter.Write(song, new SheetStyle(FindsRiffs: false));
        Assert.Empty(sheet.Remarks);
        SameSong.Same(SameSong.Written(song), SameSong.Written(Read(sheet.Text)), sheet.Text);
    });

    [Fact]
    public void AGeneratedSong_WrittenWithRiffsFound_SoundsTheSame() => SheetGen.Valid(1500, 1000, song =>
    {
        var sheet = SheetWriter.Write(song with { Riffs = [], RiffUses = [] });
        SameSong.Same(SameSong.Performed(song), SameSong.Performed(Read(sheet.Text)), sheet.Text);
    });

    [Fact]
    public void Chords_AreNamedByWhatTheyAre_AndRiffsAfterTheirSection()
    {
        var song = Fretlore.Tests.Songs.Sheets.Song(
            "title Ash\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 90\npart lead \"Lead\"\nsection Verse\n  lead H [. 0 2 0 1 0] [2 4 4 2 2 2] | @3 E 5 7 5 7 9 7 5 4 | H [. 0 2 0 1 0] [2 4 4 2 2 2] | @3 E 5 7 5 7 9 7 5 4 |\n"
            + "section Chorus\n  lead H [. 0 2 0 1 0] [2 4 4 2 2 2] | @2 E 5 7 5 7 9 7 5 4 |\n");
        var sheet = SheetWriter.Write(song).Text;
        Assert.Matches(@"shape am7 +\[\. 0 2 0 1 0\]", sheet);
        Assert.Matches(@"shape f-sharp-m +\[2 4 4 2 2 2\]", sheet);
        Assert.Contains("riff verse-riff\n", sheet, StringComparison.Ordinal);
        SameSong.Same(SameSong.Performed(song), SameSong.Performed(Read(sheet)), sheet);
    }

    [Fact]
    public void WhatIsSaidOfASong_IsWrittenAgain()
    {
        var song = Read("title Orme\nartist Vent d'Est\ncredits Rue Basse\nrights Domaine public\npermission Aucune\nlanguage fr-CA\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\nsection Refrain\n  @6 W 0 |\n");
        Assert.Equal("fr-CA", song.Info.Language);
        Assert.Equal(song.Info, Read(SheetWriter.Write(song).Text).Info);
    }

    private static Song Read(string sheet) => Fretlore.Tests.Songs.Sheets.Song(sheet);
}
