using System.Globalization;
using Fretlore.Binding;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Hands.Picking;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Engraving.Layout;

public class CollisionFacts
{
    private const int Songs = 40;

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
        var turn = 0;
        foreach (var preset in PaperPreset.All)
        {
            foreach (var shown in Enum.GetValues<Notation>())
            {
                foreach (var withDegrees in (ReadOnlySpan<bool>)[false, true])
                {
                    // Each paper, each notation and both with and without degrees, if not each with each; FRETLORE_SOAK tries them all.
                    if (turn++ % 5 != 0 && NumberIn("FRETLORE_SOAK") is null) continue;
                    NoneOf(Collisions(song, reading, new PageOptions
                    {
                        Paper = preset.Paper,
                        StaffSpace = preset.StaffSpace,
                        Show = shown,
                        Degrees = withDegrees,
                        SymbolStyle = withDegrees ? ChordStyle.Signs : ChordStyle.Letters,
                    }));
                }
            }
        }
    }

    [Fact]
    public void Study_HasNoSignOnAnother()
    {
        foreach (var song in new[] { StudySongs.EverySign(), StudySongs.TwoGuitars(12), StudySongs.TwoVoices(), StudySongs.BarSigns(), StudySongs.JumpsAndOrnaments() })
        {
            NoneOf(Collisions(song, Studies.SpelledByKey(song)));
        }
    }

    // Thrown together from every sign as no player would; half of them with planned fingers, positions and strokes. FRETLORE_SOAK=1000 checks
    // so many songs, from the one numbered FRETLORE_SOAK_FROM on, or only those numbered in FRETLORE_SOAK_SONGS=3,7; FRETLORE_SOAK_PICTURES=FOLDER shows what touches.
    [Fact]
    public void GeneratedSongs_HaveNoSignOnAnother()
    {
        var (songs, from) = (NumberIn("FRETLORE_SOAK") ?? Songs, NumberIn("FRETLORE_SOAK_FROM") ?? 0);
        var folder = Environment.GetEnvironmentVariable("FRETLORE_SOAK_PICTURES");
        var numbers = Environment.GetEnvironmentVariable("FRETLORE_SOAK_SONGS")?.Split(',').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray() ?? Enumerable.Range(from, songs).ToArray();
        var found = numbers.AsParallel().AsOrdered().SelectMany(seed =>
        {
            var song = RandomSongs.Of(seed);
            var options = new PageOptions { Show = (Notation)(seed % 4 % 3) };
            SongHands? hands = null;
            if (seed / 4 % 2 == 1)
            {
                hands = HandPlanner.Plan(song);
                song = PickingPlanner.Plan(song).WrittenInto(song);
                options = options with { Hands = HandSignOptions.Printed with { PlansStrokes = true } };
            }
            var pages = Pages(song, Studies.SpelledByKey(song), options, hands);
            return pages.SelectMany((page, number) =>
            {
                var touches = InkCheck.Collisions(page, Fonts);
                if (folder is not null) TouchPictures.Write(page, touches, Fonts, folder, $"{seed}-{options.Show}-{number}");
                return touches.Select((t, i) => $"song {seed}-{options.Show}-{number}-{i}, {t.Bar}: {t}");
            });
        }).ToList();
        if (folder is not null) File.WriteAllLines(Path.Combine(Directory.CreateDirectory(folder).FullName, "touches.txt"), found);
        if (found.Count > 0) Assert.Fail($"{found.Count} touches in {numbers.Length} songs\n" + string.Join('\n', found.Take(4000)));
    }

    private static int? NumberIn(string variable) => int.TryParse(Environment.GetEnvironmentVariable(variable), out var number) ? number : null;

    private static void NoneOf(List<string> collisions)
    {
        if (collisions.Count > 0) Assert.Fail(string.Join('\n', collisions));
    }

    internal static List<string> Collisions(Song song, SongReading reading, InkKind upTo = InkKind.BarLine) => Collisions(song, reading, new PageOptions(), upTo);

    private static List<string> Collisions(Song song, SongReading reading, PageOptions options, InkKind upTo = InkKind.BarLine) =>
        [.. Pages(song, reading, options).SelectMany(page => InkCheck.Collisions(page, Fonts, upTo)).Select(t => t.ToString())];

    private static ValueList<DrawnPage> Pages(Song song, SongReading reading, PageOptions options, SongHands? hands = null) => Assert.IsType<EngravingResult.Pages>(
        new PageEngraver(Fonts.Music, Fonts.Texts).Engrave(song, reading, options, hands)).Document.Pages;
}
