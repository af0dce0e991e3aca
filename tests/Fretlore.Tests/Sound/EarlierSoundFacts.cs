using System.Security.Cryptography;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Sound that is made again with what an earlier sheet's sound left.</summary>
public sealed class EarlierSoundFacts
{
    // Two pieces, with a join within the second section.
    private const string Band = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 240

        part rhythm "Rhythm guitar"  sound acoustic
        part lead   "Lead guitar"    sound driven

        section First
          rhythm @6-1 Q [0 2 2 1 0 0] R [3 2 0 0 0 3]! R | times 4{ @5 E 0 3 @4 2 0 @3 Q 2 R | }
          lead   @2 H 8+v E 5,8 Q 5v | times 4{ pm{ @6 E 0 0 0 0 } @5 Q 3 5 | }

        section Last
          rhythm times 8{ @5 Q 0 3 @4 2 0 | }
          lead   rest 8

        """;

    private static readonly (string What, string From, string To)[] Edits =
    [
        ("a fret", "@2 H 8+v E 5,8", "@2 H 8+v E 6,8"),
        ("a note more", "[3 2 0 0 0 3]! R | times", "[3 2 0 0 0 3]! E @1 3 5 | times"),
        ("a note less", "@5 Q 0 3 @4 2 0", "@5 Q 0 3 @4 2 R"),
        ("a technique", "E 5,8 Q 5v", "E 5 8 Q 5"),
        ("a longer bar", "section Last\n  rhythm times 8{ @5 Q 0 3 @4 2 0 | }", "section Last\n  meter 5/4\n  rhythm times 8{ @5 Q 0 3 @4 2 0 0 | }"),
        ("the tempo", "Q = 240", "Q = 236"),
        ("a part more", "part lead ", "part low \"Bass\" sound bass\n  tuning E1 A1 D2 G2\n\npart lead "),
        ("a rig", "sound acoustic", "sound clean"),
    ];

    [Fact]
    public void AfterEachEdit_TheBytesAreThoseOfSoundMadeAnew()
    {
        using var earlier = new EarlierSound();
        var before = Files(Band, earlier);
        foreach (var (what, from, to) in Edits)
        {
            Assert.Contains(from, Band, StringComparison.Ordinal);
            var changed = Band.Replace(from, to, StringComparison.Ordinal);
            var after = Files(changed, earlier);
            Assert.True(!before.SequenceEqual(after), what);
            Assert.True(Files(changed, null).SequenceEqual(after), what);
            before = after;
        }
    }

    [Fact]
    public void HowMuchIsToBePlayedAgain_IsKnownBefore()
    {
        using var earlier = new EarlierSound();
        Assert.Equal(1, earlier.ShareOf(Mix(Band)));
        Files(Band, earlier);
        Assert.Equal(0, earlier.ShareOf(Mix(Band)));
        // One of two pieces of one of two parts; and all.
        Assert.Equal(0.25, earlier.ShareOf(Mix(Band.Replace("E 5,8", "E 6,8", StringComparison.Ordinal))));
        Assert.Equal(1, earlier.ShareOf(Mix(Band.Replace("Q = 240", "Q = 236", StringComparison.Ordinal))));
    }

    [Fact]
    public void SoundThatWasStoppedHalfway_IsMadeAsIfItHadNotBeen()
    {
        using var earlier = new EarlierSound();
        Files(Band, earlier);
        var changed = Band.Replace("Q = 240", "Q = 236", StringComparison.Ordinal);
        foreach (var share in (double[])[0.2, 0.65, 0.9])
        {
            using var stop = new CancellationTokenSource();
            Assert.ThrowsAny<OperationCanceledException>(() => Files(changed, earlier, done =>
            {
                if (done > share) stop.Cancel();
            }, stop.Token));
        }
        Assert.Equal(Files(Band, null), Files(Band, earlier));
    }

    [Fact]
    public void AClick_IsNeverTakenFromAnEarlierSheet()
    {
        using var earlier = new EarlierSound();
        var clicked = new SoundRequest { Click = true };
        Files(Band, earlier, asked: clicked);
        var changed = Band.Replace("tempo  Q = 240", "tempo  Q = 240\nmeter  2/4", StringComparison.Ordinal);
        changed = changed.Replace("@6-1 Q [0 2 2 1 0 0] R [3", "@6-1 Q [0 2 2 1 0 0] R | [3", StringComparison.Ordinal).Replace("@5 E 0 3 @4 2 0 @3", "@5 E 0 3 @4 2 0 | @3", StringComparison.Ordinal)
            .Replace("@2 H 8+v E 5,8", "@2 H 8+v | E 5,8", StringComparison.Ordinal).Replace("@6 E 0 0 0 0 } @5", "@6 E 0 0 0 0 } | @5", StringComparison.Ordinal)
            .Replace("@5 Q 0 3 @4 2 0 |", "@5 Q 0 3 | @4 2 0 |", StringComparison.Ordinal).Replace("rest 8", "rest 16", StringComparison.Ordinal);
        Assert.Equal(Files(changed, null, asked: clicked), Files(changed, earlier, asked: clicked));
    }

    [Fact]
    public void AFootOnThePedal_GoesByWhereInTheSongASectionBegins()
    {
        const string Wah = "title  Test Piece\ntuning E2 A2 D3 G3 B3 E4\ntempo  Q = 120\n\nsection First\n  @5 W 0 |\n\nsection Last\n  meter 4/4\n  wah{ @5 E 0 3 5 3 0 3 5 7 | }\n";
        var later = Wah.Replace("section First\n  @5 W 0 |", "section First\n  meter 7/8\n  @5 H.. 0 |", StringComparison.Ordinal);
        var last = new SoundRequest { Section = "Last", Exact = true };
        Assert.NotEqual(Files(Wah, null, asked: last), Files(later, null, asked: last));
        Assert.NotEqual(Mix(Wah, last).Content, Mix(later, last).Content);
        Assert.Equal(Mix(Wah, last).Content, Mix(Wah, last).Content);
    }

    private static List<string> Files(string sheet, EarlierSound? earlier, Action<double>? progress = null, CancellationToken? stop = null, SoundRequest? asked = null)
    {
        var mix = Mix(sheet, asked);
        MemoryStream[] files = [.. Enumerable.Range(0, 1 + mix.Parts.Length).Select(_ => new MemoryStream())];
        var pieces = mix.Parts.Contains(null) ? null : new StemPieces(300_000);
        StemFiles.Write(mix, () => new MemoryStream(), files[0], files[1..], SoundFormat.Opus, progress, pieces, earlier, stop ?? TestContext.Current.CancellationToken);
        return [.. files.Select(file => Hash(file.ToArray())), .. (pieces?.Parts ?? []).SelectMany(part => part).Select(piece => Hash(piece.AsSpan()))];
    }

    private static SongMix Mix(string sheet, SoundRequest? asked = null) => Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(Sheets.Song(sheet), asked ?? new SoundRequest())).Mix;

    private static string Hash(ReadOnlySpan<byte> bytes) => Convert.ToHexString(SHA256.HashData(bytes));
}
