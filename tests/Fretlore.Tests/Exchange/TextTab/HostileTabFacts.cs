using System.Text;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Sheets;
using Fretlore.Exchange.TextTab;
using Fretlore.Reading;
using Fretlore.Tests.Exchange.Import;

namespace Fretlore.Tests.Exchange.TextTab;

/// <summary>Tabs that were damaged, by accident or with intent. FRETLORE_SOAK gives the number of files for a longer run.</summary>
public sealed class HostileTabFacts
{
    private const int UsualFiles = 1500;

    private static readonly string[] Pieces =
        ["|", ":|", "|:", "-", "--------", "12", "999", "e|--", "\n", "\r", "\t", "(7/8)", "x4", "1.---|", "PM---|", "E E Q", "\0", "é", "Tuning: X", "Capo: 99", "Tempo: 0", "Metre: 0/0", "rest 999", "E:3", "[Verse]", "h", "b(1/0)", "<99>"];

    [Fact]
    public void ADamagedTab_IsReadOrRefused_AndWhatIsReadCanBeWritten()
    {
        var seeds = new[] { PostedTab.LowRiff, Own(StudySongs.Plain()), Own(StudySongs.Legato()) };
        var (made, refused, invalid, slowest) = (0, 0, 0, new Slowest());
        Parallel.For(0, Soak.Files(UsualFiles), new ParallelOptions { MaxDegreeOfParallelism = 2 }, number =>
        {
            var random = new Random(number);
            var seed = seeds[random.Next(seeds.Length)];
            var file = random.Next(4) == 0 ? DamagedBytes.Of(Encoding.UTF8.GetBytes(seed), random) : Encoding.UTF8.GetBytes(Damaged(seed, random));
            var result = slowest.Of(() => TextTabReader.Read(file));
            if (result is ImportResult.Made song)
            {
                Interlocked.Increment(ref made);
                if (number < UsualFiles && Fretlore.Tests.Songs.Sheets.Read(SheetWriter.Write(song.Song).Text).HasErrors) Interlocked.Increment(ref invalid);
            }
            else Interlocked.Increment(ref refused);
        });
        TestContext.Current.TestOutputHelper?.WriteLine($"{made} made, {refused} refused, {invalid} sheets with errors, the slowest took {slowest.Milliseconds} ms.");
        Assert.True(made > Soak.Files(UsualFiles) / 10, $"{made} made, {refused} refused.");
        Assert.True(invalid == 0, $"{invalid} of {made} sheets have errors, {refused} files were refused.");
    }

    [Fact]
    public void BytesThatAreNoText_AreRefused() => Assert.IsType<ImportResult.Refused>(TextTabReader.Read([.. Enumerable.Range(0, 4000).Select(i => (byte)(i * 37 % 256))]));

    private static string Own(Fretlore.Score.Song song) => TextTabWriter.Write(song, SongReader.Read(song)).Text;

    private static string Damaged(string text, Random random)
    {
        for (var n = random.Next(1, 6); n > 0; n--)
        {
            var at = random.Next(text.Length + 1);
            text = random.Next(5) switch
            {
                0 or 1 => text[..at] + Pieces[random.Next(Pieces.Length)] + text[at..],
                2 => text[..at] + text[Math.Min(text.Length, at + random.Next(1, 60))..],
                3 => text[..at] + text[at..Math.Min(text.Length, at + random.Next(1, 200))] + text[at..],
                _ => at < text.Length ? text[..at] + (char)random.Next(32, 127) + text[(at + 1)..] : text,
            };
        }
        return text;
    }
}
