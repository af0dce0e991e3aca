using Fretlore.Exchange.Sheets;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

/// <summary>The strings that a sheet says are on.</summary>
public class GaugeFacts
{
    private const string Band = """
        title  Strung
        tuning E2 A2 D3 G3 B3 E4
        gauges .046w 36w 26w 17p 13 10
        tempo  Q = 90

        part lead   "Lead"
        part rhythm "Rhythm"
          gauges 52w 42w 30w 20p 14 11
        part bass   "Bass"
          tuning E1 A1 D2 G2

        section All
          lead   @1 W 0 |
          rhythm @6 W 0 |
          bass   @4 W 0 |

        """;

    [Fact]
    public void Gauges_AreWrittenLowToHigh_AndAPartMayHaveItsOwn()
    {
        var parts = Sheets.Song(Band).Parts;
        Assert.Equal(".010 .013 .017 .026w .036w .046w", string.Join(' ', parts[0].Strings));
        Assert.Equal(".011 .014 .020 .030w .042w .052w", string.Join(' ', parts[1].Strings));
    }

    [Fact]
    public void ABass_DoesNotGetTheGuitarsStrings() => Assert.Empty(Sheets.Song(Band).Parts[2].Strings);

    [Fact]
    public void ASheetWrittenAnew_HasTheSameStrings() => Assert.Equal(
        Sheets.Song(Band).Parts.Select(p => p.Strings), Sheets.Song(SheetWriter.Write(Sheets.Song(Band)).Text).Parts.Select(p => p.Strings));
}
