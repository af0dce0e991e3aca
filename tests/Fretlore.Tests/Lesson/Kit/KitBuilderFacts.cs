using System.Text;
using Fretlore.Exchange.TextTab;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Kit;
using Fretlore.Lesson.Kit.Sections;
using Fretlore.Lesson.Licks;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;
using Fretlore.Workspace;

namespace Fretlore.Tests.Lesson.Kit;

/// <summary>A kit whose sound is made beside its other files.</summary>
public sealed class KitBuilderFacts : IDisposable
{
    private const string Sheet = Sheets.Top + """
        riff rise
          @6 Q 0 3 5 3 |

        riff fall
          @5 Q 5 3 2 0 |

        section All
          guitar  rise fall

        lesson
          step "Rise" teach rise at 80% 100%
          step "Fall" teach fall at 100%
          step "All" teach All

        """;

    private readonly KitCache cache = new();
    private KitOptions? options;
    private int rooms;

    [Fact]
    public void Shares_NeverGoBack_AndEveryStepIsSaidOnce()
    {
        var moments = new List<KitMoment>();
        Make(Sheet, moments.Add);
        Assert.Equal(moments.Select(m => m.Share).Order(), moments.Select(m => m.Share));
        Assert.All(moments, m => Assert.InRange(m.Share, 0, 1));
        var said = moments.Select(m => m.Doing).ToList();
        var steps = said.Where((what, i) => i == 0 || said[i - 1] != what).ToList();
        Assert.Distinct(steps);
        Assert.Equal("Reading the music", steps[0]);
        Assert.Equal("Playing loops and licks", steps[^1]);
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void TextTab_IsAmongTheHandOuts_AsItIsExported(string name)
    {
        var song = DemoSongs.Load(name);
        var made = new TextTabSection().Make(Source(song), _ => { });
        var file = Assert.Single(Assert.IsType<SectionResult.Made>(made).Files);
        Assert.Equal(("song.txt", Audience.Supporters), (file.Path, file.Audience));
        Assert.Equal(TextTabWriter.Write(song, SongReader.Read(song)).Text, Encoding.UTF8.GetString(file.Bytes.AsSpan()));
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void LickCard_HasTheFingersThatThePagesHave(string name)
    {
        var song = DemoSongs.Load(name);
        var hands = HandPlanner.Plan(song);
        foreach (var lick in KitLick.Of(Source(song)))
        {
            var words = lick.Card.Parts[0].Bars[0].Strands[0].Events[0].Words!;
            var riff = song.Riffs.FirstOrDefault(r => SpokenName.Of(r.Name).Equals(lick.Title, StringComparison.OrdinalIgnoreCase));
            if (riff is null) continue;
            var use = song.RiffUses.Where(u => u.Riff == riff.Name).OrderBy(u => u.FirstBar).ThenBy(u => u.Part).FirstOrDefault();
            var printed = LickFingers.Of(use is null ? riff.Content : [.. song.Parts[use.Part].Bars.Skip(use.FirstBar).Take(riff.Bars.Count)], hands);
            Assert.Contains(printed, words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void LickCard_KeepsTheFingersOfTheSheet()
    {
        var song = Sheets.Song(Sheet.Replace("@5 Q 5 3 2 0", "@5 Q 5f4 3f3 2f2 0", StringComparison.Ordinal));
        var card = KitLick.Of(Source(song)).Single(lick => lick.Title == "Fall").Card;
        Assert.Contains(": 4 3 2 0.", card.Parts[0].Bars[0].Strands[0].Events[0].Words, StringComparison.Ordinal);
    }

    private static KitSource Source(Song song) => new(song, () => SongReader.Read(song), () => HandPlanner.Plan(song), new KitOptions());

    [Fact]
    public void NoRoomForSound_EndsTheWholeKit_WithThatReason()
    {
        var full = new IOException("There is no room.");
        var thrown = Assert.Throws<IOException>(() => Open(Sheet).MakeKit(new KitOptions { SoundRoom = () => throw full }, stop: TestContext.Current.CancellationToken));
        Assert.Same(full, thrown);
    }

    [Theory]
    [InlineData("Engraving pages")]
    [InlineData("Playing the song")]
    [InlineData("Playing loops and licks")]
    public void KitThatIsStopped_IsNone(string doing)
    {
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => Make(Sheet, moment =>
        {
            if (moment.Doing == doing) stop.Cancel();
        }, stop));
    }

    [Fact]
    public void RiffThatChanges_IsPlayedAgain_AndTheOthersAreNot()
    {
        var changed = Sheet.Replace("5 3 2 0", "5 3 2 3", StringComparison.Ordinal);
        Make(Sheet);
        // A room for the part and one for its level; a loop for each speed and for the section; a lick each.
        Assert.Equal(2 + 2 + 1 + 1 + 2, rooms);
        rooms = 0;
        var again = Make(changed);
        // The song's rooms are kept.
        Assert.Equal(1 + 1 + 1, rooms);
        var anew = Assert.IsType<KitResult.Made>(Open(changed).MakeKit(Options, stop: TestContext.Current.CancellationToken));
        Assert.Equal(Hashes(anew), Hashes(again));
        rooms = 0;
        Make(changed + "\n-- A remark.\n");
        Assert.Equal(0, rooms);
    }

    public void Dispose() => cache.Dispose();

    private KitOptions Options => new()
    {
        SoundRoom = () =>
        {
            Interlocked.Increment(ref rooms);
            return new MemoryStream();
        },
    };

    private KitResult.Made Make(string sheet, Action<KitMoment>? progress = null, CancellationTokenSource? stop = null) =>
        Assert.IsType<KitResult.Made>(Open(sheet).MakeKit(options ??= Options, progress, cache, stop?.Token ?? TestContext.Current.CancellationToken));

    private static SongWorkspace Open(string sheet) => SongWorkspace.Open(new SourceText(sheet));

    private static IEnumerable<(string, string)> Hashes(KitResult.Made made) => made.Kit.Files.Select(file => (file.Path, file.Sha256));
}
