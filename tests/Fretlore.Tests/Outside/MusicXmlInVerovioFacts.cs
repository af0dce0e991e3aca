using Fretlore.Performance;
using Fretlore.Tests.Exchange;

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

    // Verovio's own file has 120 ticks a quarter note and rounds the places of triplets to them.
    private static string Sorted(IEnumerable<(double Onset, int Key)> notes) =>
        string.Join(' ', notes.Select(n => (Onset: Math.Round(n.Onset * 48), n.Key)).OrderBy(n => n.Onset).ThenBy(n => n.Key).Select(n => $"{n.Onset}:{n.Key}"));
}
