using CsCheck;
using Fretlore.Binding;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Music.Chords;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Engraving.Layout;

public class CollisionFacts
{
    private static readonly FontLibrary Fonts = new();

    [Theory]
    [InlineData("salt-furnace")]
    [InlineData("kestrel-over-slate")]
    [InlineData("lanterns-on-the-weir")]
    public void Demo_HasNoSignOnAnother(string name)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Root, "demo", name + ".lore"));
        var song = SongBinder.Bind(Sheet.Parse(text)).Song!;
        var reading = SongReader.Read(song);
        foreach (var preset in PaperPreset.All)
        {
            foreach (var shown in Enum.GetValues<Notation>())
            {
                NoneOf(Collisions(song, reading, new PageOptions { Paper = preset.Paper, StaffSpace = preset.StaffSpace, Show = shown }));
                NoneOf(Collisions(song, reading, new PageOptions { Paper = preset.Paper, StaffSpace = preset.StaffSpace, Show = shown, Degrees = true, SymbolStyle = ChordStyle.Signs }));
            }
        }
    }

    [Fact]
    public void Study_HasNoSignOnAnother()
    {
        foreach (var song in new[] { StudySongs.EverySign(), StudySongs.TwoGuitars(12), StudySongs.TwoVoices(), StudySongs.BarSigns() })
        {
            NoneOf(Collisions(song, Studies.SpelledByKey(song)));
        }
    }

    [Fact]
    public void RandomSong_HasNoSignOnAnother() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var song = RandomSongs.Of(seed);
        NoneOf(Collisions(song, Studies.SpelledByKey(song), InkKind.Sign));
    }, iter: 60);

    // Chance puts slurs and beams over accidentals that no player would play: one bar in forty-five may have such a touch; all are listed when more do.
    [Fact]
    public void GeneratedSongs_HaveASignOnASlurBeamOrStem_InOneBarOfFortyFiveAtMost()
    {
        var all = Enumerable.Range(0, 150).AsParallel().AsOrdered().Select(seed =>
        {
            var song = RandomSongs.Of(seed);
            var found = Collisions(song, Studies.SpelledByKey(song)).Select(c => (Bar: $"{seed} {BarOf(c)}", Text: $"{seed} {c}")).ToArray();
            return (Bars: song.Bars.Count * song.Parts.Count, Found: found);
        }).ToArray();
        var touched = all.SelectMany(a => a.Found).Select(f => f.Bar).Distinct().Count();
        if (touched * 45 > all.Sum(a => a.Bars)) NoneOf(all.SelectMany(a => a.Found).Select(f => f.Text).ToList());
    }

    private static string BarOf(string collision) =>
        System.Text.RegularExpressions.Regex.Match(collision, "bar-[0-9]+|$").Value;

    private static void NoneOf(List<string> collisions)
    {
        if (collisions.Count > 0) Assert.Fail(string.Join('\n', collisions));
    }

    internal static List<string> Collisions(Song song, SongReading reading, InkKind upTo = InkKind.BarLine) => Collisions(song, reading, new PageOptions(), upTo);

    private static List<string> Collisions(Song song, SongReading reading, PageOptions options, InkKind upTo = InkKind.BarLine)
    {
        var found = new List<string>();
        var result = new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, reading, options);
        foreach (var page in Assert.IsType<EngravingResult.Pages>(result).Document.Pages) found.AddRange(InkCheck.Collisions(page, Fonts, upTo));
        return found;
    }
}
