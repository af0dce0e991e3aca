using System.Globalization;
using System.Text.Json;
using Fretlore.Music;
using Fretlore.Music.Keys;

namespace Fretlore.Tests.Outside;

/// <summary>Key profiles and their correlations against the published values (key_profiles.json, key_finding_checks.csv).</summary>
public class KeyFindingChecks
{
    private static readonly Dictionary<string, KeyProfile> Profiles = new()
    {
        ["KK"] = KeyProfile.KrumhanslKessler,
        ["TemperleyCBMS"] = KeyProfile.Temperley,
        ["KostkaPayne"] = KeyProfile.KostkaPayne,
        ["AardenEssen"] = KeyProfile.AardenEssen,
        ["BellmanBudge"] = KeyProfile.BellmanBudge,
    };

    private static readonly Dictionary<string, int[]> Cases = new()
    {
        ["C major scale, equal"] = [0, 2, 4, 5, 7, 9, 11],
        ["C major triad"] = [0, 4, 7],
        ["A harmonic minor scale, equal"] = [9, 11, 0, 2, 4, 5, 8],
        ["E minor pentatonic, equal"] = [4, 7, 9, 11, 2],
        ["G major scale"] = [7, 9, 11, 0, 2, 4, 6],
    };

    [Fact]
    public void Correlations_OfEveryProfileAndCase_AreThePublishedOnes()
    {
        var path = Repository.Check("key_finding_checks.csv");
        Assert.SkipWhen(path is null, "key_finding_checks.csv of the check values is not there.");
        foreach (var line in File.ReadAllLines(path).Skip(1).Where(l => l.Length > 0))
        {
            var quoted = line.Split('"');
            var rest = quoted[2].Split(',');
            Check(quoted[0].TrimEnd(','), quoted[1], rest[1], rest[2], rest[3], rest[4]);
        }
    }

    /// <summary>The twin: three rows of that table.</summary>
    [Theory]
    [InlineData("KK", "C major triad", "C major", "0.8338", "E minor", "0.7602")]
    [InlineData("TemperleyCBMS", "A harmonic minor scale, equal", "A minor", "0.9365", "C major", "0.5786")]
    [InlineData("AardenEssen", "C major scale, equal", "A minor", "0.8424", "C major", "0.8401")]
    public void Correlations_OfAFewCases_AreThePublishedOnes(string profile, string name, string best, string r, string second, string r2) =>
        Check(profile, name, best, r, second, r2);

    [Fact]
    public void Profiles_AreThePublishedNumbers()
    {
        var path = Repository.Check("key_profiles.json");
        Assert.SkipWhen(path is null, "key_profiles.json of the check values is not there.");
        using var document = JsonDocument.Parse(File.ReadAllText(path));
        foreach (var (name, profile) in Profiles)
        {
            for (var third = 0; third < 2; third++)
            {
                var values = document.RootElement.GetProperty(name)[third].EnumerateArray().Select(v => v.GetDouble()).ToArray();
                // A profile correlates perfectly with itself, and by no more than that with any key but its own.
                Assert.Equal(1, profile.Correlate(values, 0, third == 1), 12);
                for (var tonic = 1; tonic < 12; tonic++) Assert.True(profile.Correlate(values, tonic, third == 1) < 0.999);
            }
        }
    }

    private static void Check(string profile, string name, string best, string r, string second, string r2)
    {
        var weights = new double[12];
        foreach (var pitchClass in Cases[name]) weights[pitchClass] = 1;
        var ranked = Enumerable.Range(0, 24)
            .Select(k => (Tonic: k / 2, IsMinor: k % 2 == 1, Fit: Profiles[profile].Correlate(weights, k / 2, k % 2 == 1)))
            .OrderByDescending(k => k.Fit).Take(2).ToArray();
        Assert.Equal(Read(best), (ranked[0].Tonic, ranked[0].IsMinor));
        Assert.Equal(double.Parse(r, CultureInfo.InvariantCulture), ranked[0].Fit, 4);
        Assert.Equal(Read(second), (ranked[1].Tonic, ranked[1].IsMinor));
        Assert.Equal(double.Parse(r2, CultureInfo.InvariantCulture), ranked[1].Fit, 4);
    }

    private static (int Tonic, bool IsMinor) Read(string key)
    {
        var words = key.Split(' ');
        Assert.True(NoteName.TryParse(words[0], out var tonic));
        return (tonic.PitchClass, words[1] == "minor");
    }
}
