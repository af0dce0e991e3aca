using CsCheck;
using Fretlore.Binding;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Engraving.Layout;

public class CollisionFacts
{
    private static readonly FontLibrary Fonts = new();

    // Flags curl back beside their own head by the font's design, and wavy lines overlap from one piece to the next.
    private static readonly string[] Joined = ["glyph E24", "glyph EAB", "glyph E003", "glyph E004"];

    [Theory]
    [InlineData("salt-furnace")]
    [InlineData("kestrel-over-slate")]
    [InlineData("lanterns-on-the-weir")]
    public void Demo_HasNoSignOnAnother(string name)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Root, "demo", name + ".lore"));
        var song = SongBinder.Bind(Sheet.Parse(text)).Song!;
        Assert.Empty(Collisions(song, SongReader.Read(song)));
    }

    [Fact]
    public void Study_HasNoSignOnAnother()
    {
        foreach (var song in new[] { StudySongs.EverySign(), StudySongs.TwoGuitars(12), StudySongs.TwoVoices(), StudySongs.BarSigns() })
        {
            Assert.Empty(Collisions(song, Studies.SpelledByKey(song)));
        }
    }

    [Fact]
    public void RandomSong_HasNoSignOnAnother() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var song = RandomSongs.Of(seed);
        Assert.Empty(Collisions(song, Studies.SpelledByKey(song)));
    }, iter: 60);

    internal static List<string> Collisions(Song song, SongReading reading)
    {
        var found = new List<string>();
        var result = new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, reading, new PageOptions());
        foreach (var page in Assert.IsType<EngravingResult.Pages>(result).Document.Pages)
        {
            var all = InkBoxes.Of(page, Fonts).ToArray();
            var signs = all.Where(b => !b.Path.EndsWith(" line", StringComparison.Ordinal) && !Joined.Any(b.Path.Contains)).OrderBy(b => b.Ink.Left).ToArray();
            for (var i = 0; i < signs.Length; i++)
            {
                for (var j = i + 1; j < signs.Length && signs[j].Ink.Left < signs[i].Ink.Right; j++)
                {
                    if (InkBoxes.Overlap(signs[i].Ink, signs[j].Ink, 0.15)) found.Add($"{signs[i].Path} on {signs[j].Path}");
                }
            }
        }
        return found;
    }
}
