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

    private static Song Read(string sheet) => Fretlore.Tests.Songs.Sheets.Song(sheet);
}
