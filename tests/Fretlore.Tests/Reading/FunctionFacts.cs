using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Reading;

/// <summary>Roman numerals, functions and cadences (common practice; numerals of modes count from the major scale).</summary>
public class FunctionFacts
{
    [Theory]
    [InlineData("C major", "C F G C", "I IV V I")]
    [InlineData("C major", "C Am Dm G7", "I vi ii V7")]
    [InlineData("A minor", "Am Dm E7 Am", "i iv V7 i")]
    [InlineData("A minor", "Am F C G", "i bVI bIII bVII")]
    [InlineData("D dorian", "Dm G Dm C", "i IV i bVII")]
    [InlineData("G mixolydian", "G F C G", "I bVII IV I")]
    [InlineData("E phrygian", "Em F Em", "i bII i")]
    [InlineData("C major", "C A7 Dm G7", "I V7/ii ii V7")]
    [InlineData("C major", "C Fm C", "I iv I")]
    [InlineData("C major", "C Bm7b5 Am", "I viiø7 vi")]
    public void Numerals_AreThoseOfTheTextbook(string key, string chords, string numerals) =>
        Assert.Equal(numerals, string.Join(' ', Read(key, chords).Chords.Select(c => c.Function!.Numeral)));

    [Fact]
    public void AMinorFourthInMajor_IsBorrowedFromMinor()
    {
        var function = Read("C major", "C Fm C").Chords[1].Function!;
        Assert.Equal(HarmonicFunction.Borrowed, function.Kind);
        Assert.Equal("borrowed from C minor", function.Words);
    }

    [Fact]
    public void TheMajorFourthOfDorian_IsSaidToMakeItDorian() => Assert.Equal(
        "subdominant: leads away from home; has the sixth that makes it dorian", Read("D dorian", "Dm G Dm").Chords[1].Function!.Words);

    [Theory]
    [InlineData("C major", "C F G C", CadenceKind.Authentic)]
    [InlineData("C major", "C G F C", CadenceKind.Plagal)]
    [InlineData("G mixolydian", "G C F G", CadenceKind.Subtonic)]
    [InlineData("E phrygian", "Em G F Em", CadenceKind.Phrygian)]
    [InlineData("C major", "C F G Am", CadenceKind.Deceptive)]
    [InlineData("C major", "C Am F G", CadenceKind.Half)]
    public void ASectionsLastTwoChords_MakeItsCadence(string key, string chords, CadenceKind expected) =>
        Assert.Equal(expected, Assert.Single(Read(key, chords).Cadences).Kind);

    private static readonly Dictionary<string, string> Shapes = new()
    {
        ["C"] = "x32010", ["F"] = "133211", ["G"] = "320003", ["Am"] = "x02210", ["Dm"] = "xx0231", ["G7"] = "320001", ["E7"] = "020100",
        ["Em"] = "022000", ["A7"] = "x02020", ["Fm"] = "133111", ["Bm7b5"] = "x2323x",
    };

    private static PartReading Read(string key, string chords)
    {
        var words = key.Split(' ');
        Assert.True(Key.TryParse(words[0], words[1], out var parsed));
        var builder = new SongBuilder { Key = parsed }.Part("guitar");
        var names = chords.Split(' ');
        foreach (var name in names) builder.Bar(Strum(Shapes[name]));
        var song = builder.Build() with { Sections = [new Section("All", 0, names.Length)] };
        var read = SongReader.Read(song).Parts[0];
        Assert.Equal(names, read.Chords.Select(c => c.Symbol));
        return read;
    }

    private static Func<Neck, Event> Strum(string frets) => SongBuilder.Play(
        ValueBase.Whole, [.. frets.Select((c, i) => (6 - i, c == 'x' ? -1 : c - '0')).Where(p => p.Item2 >= 0)]);
}
