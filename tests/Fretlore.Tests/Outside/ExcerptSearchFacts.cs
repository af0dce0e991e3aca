using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Kit;
using Fretlore.Reading;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>A free excerpt, searched with poppler's, qpdf's and sox's eyes and ears for anything of the bars it does not show.</summary>
public class ExcerptSearchFacts
{
    private const string Sheet = """
        title  Lantern Street
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 120

        part one "One"

        shape unheard [3 . . . . 19]

        riff opening
          "Shown words" @6 Q 0 3 5 7 | @6 W 7 |

        riff secretriff
          "Hidden words" (chord Zmaj) @1 Q 17 18 19 17 | W #unheard |

        section Visible
          opening
        section Concealed
          secretriff times 6

        lesson
          excerpt Visible
          step "Undisclosed" teach secretriff say "Unspoken words."
        """;

    private static readonly string[] Secrets = ["secretriff", "Hidden", "Zmaj", "unheard", "Concealed", "Undisclosed", "Unspoken", "17", "18", "19"];

    private static readonly KitResult.Made Kit = Make();

    [Fact]
    public void Pdf_ShowsTheBars_AndHoldsNothingOfTheOthers()
    {
        using var pdf = new TemporaryFile(".pdf", Bytes("excerpt/pages.pdf"));
        var text = OutsideProgram.Run("pdftotext", "-layout", pdf.Path, "-");
        Assert.Contains("Lantern Street (free excerpt: bars 1 to 2 of", text, StringComparison.Ordinal);
        Assert.Contains("Shown words", text, StringComparison.Ordinal);
        foreach (var secret in Secrets) Assert.DoesNotContain(secret, text.Replace("2 of 14", "", StringComparison.Ordinal), StringComparison.Ordinal);
        // Everything in the file uncompressed: outlines, metadata, fonts' names.
        using var whole = new TemporaryFile(".pdf", []);
        OutsideProgram.Run("qpdf", "--qdf", "--object-streams=disable", pdf.Path, whole.Path);
        var raw = Encoding.Latin1.GetString(File.ReadAllBytes(whole.Path));
        foreach (var secret in Secrets.Where(s => s.Length > 2))
        {
            Assert.DoesNotContain(secret, raw, StringComparison.Ordinal);
            Assert.DoesNotContain(Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(secret)), raw, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Sound_EndsWithTheBars()
    {
        using var opus = new TemporaryFile(".opus", Bytes("excerpt/sound.opus"));
        var seconds = double.Parse(
            OutsideProgram.Run("ffprobe", "-v", "error", "-show_entries", "format=duration", "-of", "csv=p=0", opus.Path), System.Globalization.CultureInfo.InvariantCulture);
        // Two bars of two seconds, and what the last note takes to die away; the song is 28 seconds long.
        Assert.InRange(seconds, 4, 12);
        var tags = OutsideProgram.Run("ffprobe", "-v", "error", "-show_entries", "format_tags:stream_tags", opus.Path);
        Assert.Contains("free excerpt", tags, StringComparison.Ordinal);
        foreach (var secret in Secrets.Where(s => s.Length > 2)) Assert.DoesNotContain(secret, tags, StringComparison.Ordinal);
    }

    [Fact]
    public void Midi_HoldsTheNotesOfTheBarsAlone()
    {
        var midi = Encoding.Latin1.GetString(Bytes("excerpt/excerpt.mid"));
        foreach (var secret in Secrets.Where(s => s.Length > 2)) Assert.DoesNotContain(secret, midi, StringComparison.Ordinal);
        var full = Encoding.Latin1.GetString(Bytes("song.mid"));
        Assert.Contains("Concealed", full, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_HoldsNothingOfTheOtherBars()
    {
        var page = Unpacked("excerpt/practice.html");
        Assert.Contains("Lantern Street (free excerpt: bars 1 to 2 of", page, StringComparison.Ordinal);
        Assert.Contains("Shown words", page, StringComparison.Ordinal);
        // Shorter ones come by chance in sound written in letters.
        foreach (var secret in Secrets.Where(s => s.Length > 5)) Assert.DoesNotContain(secret, page, StringComparison.Ordinal);
        var full = Unpacked("practice.html");
        foreach (var secret in (string[])["Concealed", "Undisclosed", "Unspoken", "Hidden"]) Assert.Contains(secret, full, StringComparison.Ordinal);
        // Each written note is marked once or more by its id: those of the two bars, and no other.
        Assert.Equal(Notes(page).Max() + 1, Notes(page).Count);
        Assert.Equal(5, Notes(page).Count);
        Assert.True(Notes(full).Count > 5);
    }

    // The page, and the pictures of pages packed in it (gzip in Base64) as they are when unpacked.
    private static string Unpacked(string path)
    {
        var page = Encoding.UTF8.GetString(Bytes(path));
        return page + string.Concat(Regex.Matches(page, ">(H4sI[^<]+)<").Select(packed =>
        {
            using var zip = new GZipStream(new MemoryStream(Convert.FromBase64String(packed.Groups[1].Value)), CompressionMode.Decompress);
            using var text = new StreamReader(zip);
            return text.ReadToEnd();
        }));
    }

    private static SortedSet<int> Notes(string page) =>
        [.. Regex.Matches(page, @"note-(\d+)").Select(m => int.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture))];

    [Fact]
    public void ArchiveForEveryone_HoldsTheExcerpt_AndNothingThatIsForSupporters()
    {
        var free = Entries("lantern-street-everyone.zip");
        Assert.NotEmpty(free);
        Assert.All(free, name => Assert.True(name.StartsWith("lantern-street/excerpt/", StringComparison.Ordinal) || name == "lantern-street/sheets/tuning.pdf", name));
        var all = Entries("lantern-street-supporters.zip");
        Assert.Empty(free.Except(all));
        Assert.Contains("lantern-street/pages/full.pdf", all);
        Assert.DoesNotContain("lantern-street/script.md", all);
        Assert.DoesNotContain(all, name => name.Contains("/film/", StringComparison.Ordinal));
    }

    [Fact]
    public void Archives_AreTheSameBytesTwice_AndReadByAnotherProgram()
    {
        Assert.Equal(Bytes("lantern-street-supporters.zip"), Make().Kit.Files.Single(f => f.Path == "lantern-street-supporters.zip").Bytes.ToArray());
        using var zip = new TemporaryFile(".zip", Bytes("lantern-street-supporters.zip"));
        Assert.Contains("No errors detected", OutsideProgram.Run("python3", "-c", "import sys, zipfile; print(zipfile.ZipFile(sys.argv[1]).testzip() or 'No errors detected')", zip.Path), StringComparison.Ordinal);
    }

    private static string[] Entries(string archive)
    {
        using var zip = new ZipArchive(new MemoryStream(Bytes(archive)));
        Assert.All(zip.Entries, entry => Assert.Equal(1980, entry.LastWriteTime.Year));
        return [.. zip.Entries.Select(entry => entry.FullName)];
    }

    private static byte[] Bytes(string path) => Kit.Kit.Files.Single(f => f.Path == path).Bytes.ToArray();

    private static KitResult.Made Make()
    {
        var song = Sheets.Song(Sheet);
        var source = new KitSource(song, () => SongReader.Read(song), () => HandPlanner.Plan(song), new KitOptions { SoundRoom = () => new MemoryStream() });
        return Assert.IsType<KitResult.Made>(KitBuilder.Build(source));
    }
}
