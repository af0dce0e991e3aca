using System.Text;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.MusicXml;
using Fretlore.Exchange.Sheets;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Exchange.Import;

/// <summary>Files that were damaged, by accident or with intent. FRETLORE_SOAK gives the number of files for a longer run.</summary>
public sealed class HostileFileFacts
{
    private const int UsualFiles = 1500;

    private static readonly string[] Pieces =
    [
        "<chord/>", "<grace/>", "<rest/>", "<backup><duration>9999</duration></backup>", "<forward><duration>7</duration></forward>", "-1", "0", "999999999",
        "1e308", "NaN", "</note>", "<note>", "</measure>", "<measure>", "</part>", "<tie type=\"stop\"/>", "<string>9</string>", "<fret>-3</fret>", "<fret>99</fret>",
        "<divisions>0</divisions>", "<divisions>7919</divisions>", "<beats>0</beats>", "<voice>9</voice>", "<staff>2</staff>", "&", "<", "\0", "<![CDATA[", "<!--",
        "<repeat direction=\"backward\"/>", "<ending number=\"1-100\" type=\"start\"/>", "<hammer-on type=\"stop\"/>", "<bend><bend-alter>99</bend-alter></bend>",
    ];

    [Fact]
    public void ADamagedScore_IsReadOrRefused_AndWhatIsReadCanBeWritten()
    {
        var seeds = Seeds();
        var files = Soak.Files(UsualFiles);
        var (made, refused, invalid, slowest) = (0, 0, 0, new Slowest());
        Parallel.For(0, files, new ParallelOptions { MaxDegreeOfParallelism = 2 }, number =>
        {
            var random = new Random(number);
            var file = Damaged(seeds[random.Next(seeds.Count)], random);
            var result = slowest.Of(() => MusicXmlReader.Read(file));
            if (result is ImportResult.Made song)
            {
                Interlocked.Increment(ref made);
                if (number < UsualFiles && Fretlore.Tests.Songs.Sheets.Read(SheetWriter.Write(song.Song).Text).HasErrors) Interlocked.Increment(ref invalid);
            }
            else
            {
                Interlocked.Increment(ref refused);
                Assert.NotEmpty(((ImportResult.Refused)result).Reason);
            }
        });
        TestContext.Current.TestOutputHelper?.WriteLine($"{made} made, {refused} refused, {invalid} sheets with errors, the slowest took {slowest.Milliseconds} ms.");
        // A reader that refuses everything would pass too, and one that makes sheets with errors is of little use.
        Assert.True(made > files / 10 && refused > files / 10, $"{made} made, {refused} refused.");
        Assert.True(invalid == 0, $"{invalid} of {made} sheets have errors, {refused} files were refused.");
    }

    [Fact]
    public void ADamagedArchive_IsReadOrRefused()
    {
        var scores = Repository.Check("scores") is { } folder ? Directory.GetFiles(folder, "*.mxl").Order().Take(4).Select(File.ReadAllBytes).ToList() : [];
        Assert.SkipWhen(scores.Count == 0, "The check values are not beside the checkout.");
        for (var number = 0; number < 200; number++)
        {
            var random = new Random(number);
            var file = scores[random.Next(scores.Count)].ToArray();
            for (var n = random.Next(1, 8); n > 0; n--) file[random.Next(3) == 0 ? random.Next(file.Length) : file.Length - 1 - random.Next(200)] = (byte)random.Next(256);
            if (random.Next(4) == 0) file = file[..random.Next(file.Length)];
            _ = MusicXmlReader.Read(file);
        }
    }

    private static List<byte[]> Seeds()
    {
        var seeds = new List<byte[]> { Written.MusicXmlBytes(StudySongs.Plain()), Written.MusicXmlBytes(StudySongs.Legato()) };
        seeds.Add(Encoding.UTF8.GetBytes(Imported.ScoreOf(Imported.Note("E", 4, 8, "half"), Imported.Note("G", 3, 16, "whole", notations: "<tied type=\"start\"/>"))));
        if (Repository.Check("musicxml/examples/tutorial-tablature.musicxml") is { } tutorial) seeds.Add(File.ReadAllBytes(tutorial));
        return seeds;
    }

    private static byte[] Damaged(byte[] seed, Random random)
    {
        var text = Encoding.UTF8.GetString(seed);
        for (var n = random.Next(1, 5); n > 0; n--)
        {
            var at = random.Next(text.Length + 1);
            switch (random.Next(6))
            {
                case 0:
                    text = text[..at] + Pieces[random.Next(Pieces.Length)] + text[at..];
                    break;
                case 1:
                    text = text[..at] + text[Math.Min(text.Length, at + random.Next(40))..];
                    break;
                case 2: // An element's text, so that the file stays sound XML.
                    var open = text.IndexOf('>', at);
                    var close = open < 0 ? -1 : text.IndexOf('<', open);
                    if (close > open + 1) text = text[..(open + 1)] + Pieces[random.Next(5, 10)].Replace("<", "", StringComparison.Ordinal) + text[close..];
                    break;
                case 3: // A whole element, put in where another begins.
                    var begin = text.IndexOf("<note", at, StringComparison.Ordinal);
                    if (begin > 0) text = text[..begin] + WholePiece(random) + text[begin..];
                    break;
                case 4:
                    var digit = text.IndexOfAny([.. "0123456789"], at);
                    if (digit > 0) text = text[..digit] + (char)('0' + random.Next(10)) + text[(digit + 1)..];
                    break;
                default:
                    if (random.Next(4) == 0) text = text[..at];
                    break;
            }
        }
        return Encoding.UTF8.GetBytes(text);
    }

    private static string WholePiece(Random random) => random.Next(6) switch
    {
        0 => "<backup><duration>3</duration></backup>",
        1 => "<forward><duration>5</duration></forward>",
        2 => Imported.Note("C", random.Next(0, 9), random.Next(1, 40), "eighth", random.Next(1, 8), random.Next(0, 30), "<hammer-on type=\"stop\"/>"),
        3 => Imported.Note("B", random.Next(0, 9), random.Next(1, 40), "quarter", notations: "<tied type=\"stop\"/><slide type=\"stop\"/>"),
        4 => "<attributes><divisions>7</divisions><time><beats>5</beats><beat-type>16</beat-type></time></attributes>",
        _ => "<note><chord/><pitch><step>A</step><octave>3</octave></pitch><duration>4</duration><voice>2</voice></note>",
    };
}
