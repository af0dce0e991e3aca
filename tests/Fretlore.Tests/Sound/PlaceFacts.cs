using Fretlore.Sound.Mixing;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Sections and riffs by name.</summary>
public sealed class PlaceFacts
{
    private const string Song = """
        title  Test Piece
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120

        part rhythm "Rhythm guitar"  sound clean
        part lead   "Lead guitar"    sound singing

        riff low
          @6 W 0 | W 3 |

        riff spare
          @4 W 2 |

        section Verse 1
          rhythm @5 W 0 | W 0 |
          lead   rest 2

        section Chorus
          tempo  Q = 60
          rhythm times 2{ low }
          lead   @1 W 13 | W 13 | W 13 | W 13

        section Verse 2
          rhythm @5 W 0
          lead   rest

        """;

    [Theory]
    [InlineData("Chorus", 16)]
    [InlineData("verse 2", 4)]
    [InlineData("Verse 1", 4)]
    public void ASection_IsItsBarsWithTheirRepeats(string name, double seconds)
    {
        var mix = Prepared(new SoundRequest { Section = name });
        Assert.Equal(seconds + 1.5, mix.Seconds, 3);
        Assert.Equal(2, mix.Parts.Length);
        Assert.Equal($"Test Piece: {name}", mix.Info.Title);
    }

    [Fact]
    public void ARiff_IsPlayedAloneByItsPart_AtTheTempoOfItsPlaceInTheSong()
    {
        var mix = Prepared(new SoundRequest { Riff = "low" });
        Assert.Equal(8 + 1.5, mix.Seconds, 3);
        Assert.Single(mix.Parts);
        Assert.Equal("Test Piece: low, Rhythm guitar", mix.Info.Title);
        var (left, _) = Heard.Mix(Sheets.Song(Song), new SoundRequest { Riff = "low" });
        Assert.InRange(Heard.Cents(Heard.Frequency(left, 1, 0.2, 82.407), 82.407), -2, 2);
        Assert.InRange(Heard.Cents(Heard.Frequency(left, 5, 0.2, 97.999), 97.999), -2, 2);
        // Nobody plays the other part's note.
        Assert.True(Heard.LevelAt(left, 1, 0.3, 698.46) < Heard.LevelAt(left, 1, 0.3, 82.407) / 50);
    }

    [Fact]
    public void ARiffWithoutItsPart_IsWhatTheOthersPlayThere()
    {
        var mix = Prepared(new SoundRequest { Riff = "low", Without = [0] });
        Assert.Equal([1], mix.Parts);
        var (left, _) = Heard.Mix(Sheets.Song(Song), new SoundRequest { Riff = "low", Without = [0] });
        Assert.True(Heard.LevelAt(left, 1, 0.3, 82.407) < Heard.LevelAt(left, 1, 0.3, 698.46) / 50);
    }

    [Fact]
    public void ARiffThatStandsNowhereInTheSong_CanBeHeardAlone()
    {
        Assert.Equal(2 + 1.5, Prepared(new SoundRequest { Riff = "spare" }).Seconds, 3);
        Assert.Contains("nowhere in the song", Refused(new SoundRequest { Riff = "spare", Parts = [0] }).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SectionMarks_AreWhereSectionsBegin()
    {
        Assert.Equal([(0L, "Verse 1"), (4 * 48000, "Chorus"), (20 * 48000, "Verse 2")], Prepared(new SoundRequest()).Marks.Select(m => (m.Sample, m.Name)));
        Assert.Equal([(4 * 48000L, "Chorus")], Prepared(new SoundRequest { Section = "Chorus", CountIn = true }).Marks.Select(m => (m.Sample, m.Name)));
        Assert.Equal([(0L, "Verse 1"), (4 * 48000, "Chorus")], Prepared(new SoundRequest { FromBar = 2, ToBar = 3, Speed = 0.5m }).Marks.Select(m => (m.Sample, m.Name)));
    }

    [Theory]
    [InlineData("Chrous", null, "Perhaps Chorus was meant. Its sections are Verse 1, Chorus, Verse 2.")]
    [InlineData(null, "lwo", "Perhaps low was meant. Its riffs are low, spare.")]
    [InlineData(null, "xyz", "Its riffs are low, spare.")]
    public void APlaceThatIsNotThere_IsNamedWithTheNearest(string? section, string? riff, string remedy) =>
        Assert.Equal(remedy, Refused(new SoundRequest { Section = section, Riff = riff }).Remedy);

    [Fact]
    public void BarsOfASectionOrRiff_AreCountedFromItsOwnFirst()
    {
        Assert.Equal(4 + 1.5, Prepared(new SoundRequest { Riff = "low", FromBar = 2 }).Seconds, 3);
        Assert.Equal(2 + 1.5, Prepared(new SoundRequest { Section = "Verse 1", FromBar = 2, ToBar = 2 }).Seconds, 3);
        Assert.Contains("1 to 2", Refused(new SoundRequest { Section = "Verse 1", FromBar = 2, ToBar = 3 }).Remedy, StringComparison.Ordinal);
        Refused(new SoundRequest { Riff = "low", FromBar = 3 });
        Refused(new SoundRequest { Riff = "low", FromBar = 0, Without = [0] });
    }

    [Fact]
    public void ASectionAndARiffAtOnce_AreRefused() => Refused(new SoundRequest { Section = "Chorus", Riff = "low" });

    private static SongMix Prepared(SoundRequest request) => Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(Sheets.Song(Song), request)).Mix;

    private static SoundResult.Refused Refused(SoundRequest request) => Assert.IsType<SoundResult.Refused>(SongMixer.Prepare(Sheets.Song(Song), request));
}
