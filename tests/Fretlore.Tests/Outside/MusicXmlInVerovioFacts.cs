using System.Text;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Exchange;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>MusicXML as a general engraving library, npm verovio, reads and plays it.</summary>
public class MusicXmlInVerovioFacts
{
    [Fact]
    public void Verovio_PlaysThePitchesAndOnsetsOfOurPerformance()
    {
        var song = StudySongs.Plain();
        var played = PlayedXml.From(Written.MusicXmlBytes(song));
        var ours = Performer.Play(song).Parts.SelectMany(p => p.Notes).Select(n => (n.Onset.ToDouble(), n.Height.Midi));
        Assert.Equal(Sorted(ours), Sorted(played.Notes.Select(n => (n.Onset, n.Key))));
        Assert.Equal("", played.Log);
    }

    /// <remarks>
    /// Verovio 6.3.0 makes a bar longer where a let-ring tie stands at its end, and spreads rolled shapes by a step of its own: both are taken out
    /// before the comparison. It plays no grace notes: they are too. A tie in a shape with a unison does not say in MusicXML which of the two it holds; verovio plays one again.
    /// </remarks>
    [Theory]
    [InlineData("kestrel-over-slate.lore", 0)]
    [InlineData("lanterns-on-the-weir.lore", 1)]
    [InlineData("salt-furnace.lore", 0)]
    public void Verovio_PlaysTheDemoSongs(string name, int unisonsPlayedAgain)
    {
        var song = WithoutRollsAndGraces(DemoSongs.Load(name));
        var text = Encoding.UTF8.GetString(Written.MusicXmlBytes(song)).Replace("<tied type=\"let-ring\" />", "", StringComparison.Ordinal);
        var played = PlayedXml.From(Encoding.UTF8.GetBytes(text));
        var ours = Performer.Play(song).Parts.SelectMany(p => p.Notes).Select(n => (n.Onset.ToDouble(), n.Height.Midi));
        var (expected, actual) = (Sorted(ours).Split(' '), Sorted(played.Notes.Select(n => (n.Onset, n.Key))).Split(' '));
        Assert.Empty(expected.Except(actual));
        Assert.Equal(unisonsPlayedAgain, actual.Except(expected).Count());
        Assert.Equal(expected.Length + unisonsPlayedAgain, actual.Length);
        Assert.Equal("", played.Log);
    }

    private static Song WithoutRollsAndGraces(Song song) => song with
    {
        Parts = song.Parts.Select(p => p with
        {
            Bars = p.Bars.Select(b => b with
            {
                Strands = b.Strands.Select(s => s with { Events = s.Events.Select(e => e with { Roll = Roll.None, Stroke = Stroke.None, Graces = [] }).ToValueList() }).ToValueList(),
            }).ToValueList(),
        }).ToValueList(),
    };

    // Verovio's own file has 120 ticks a quarter note and rounds the places of triplets to them.
    private static string Sorted(IEnumerable<(double Onset, int Key)> notes) =>
        string.Join(' ', notes.Select(n => (Onset: Math.Round(n.Onset * 48), n.Key)).OrderBy(n => n.Onset).ThenBy(n => n.Key).Select(n => $"{n.Onset}:{n.Key}"));
}
