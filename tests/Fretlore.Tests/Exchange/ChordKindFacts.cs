using Fretlore.Exchange.MusicXml;
using Fretlore.Music;
using Fretlore.Reading;

namespace Fretlore.Tests.Exchange;

public class ChordKindFacts
{
    [Theory]
    [InlineData("C E G", "major", "")]
    [InlineData("A C E G", "minor-seventh", "")]
    [InlineData("A E", "power", "")]
    [InlineData("D G A", "suspended-fourth", "")]
    [InlineData("E G# B D F#", "dominant-ninth", "")]
    [InlineData("C E G D", "major", "9+0add")]
    [InlineData("E G# B D F##", "dominant", "9+1add")]
    [InlineData("C E Gb Bb", "dominant", "5-1alter")]
    [InlineData("C E Bb", "dominant", "5+0subtract")]
    [InlineData("B D F A", "half-diminished", "")]
    public void Kind_IsTheNearestOfTheStandard_AndTheRestAreDegrees(string notes, string kind, string degrees)
    {
        var names = notes.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(n => NoteName.TryParse(n, out var name) ? name : default).ToArray();
        var told = ChordKind.Of(new ChordReading("", names[0], "", names[0], [.. names], "", 0));
        Assert.Equal((kind, degrees), (told.Value, string.Join(' ', told.Degrees.Select(d => $"{d.Degree}{d.Alteration:+0;-0;+0}{d.Type}"))));
    }
}
