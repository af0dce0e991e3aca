using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Exchange.Import;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>Real scores (OpenScore Lieder, CC0) as we import them, against how npm verovio 6.3.0 plays them.</summary>
public sealed class ImportedScoreChecks
{
    public static TheoryData<string> Scores => Repository.Check("scores") is { } folder
        ? [.. Directory.GetFiles(folder, "*.mxl").Select(f => Path.GetFileName(f)).Order()]
        : [""];

    /// <summary>Scores that verovio can't be asked about, with the reason.</summary>
    private static readonly Dictionary<string, string> Exceptions = new(StringComparer.Ordinal)
    {
        ["lc6588520.mxl"] = "verovio 6.3.0 ends with an access out of bounds when it makes MIDI of this score",
        ["lc5904752.mxl"] = "notes alternate in tremolos through the last page, which each player spreads by a rule of its own",
        ["lc6903010.mxl"] = "two parts have different metres at once, and verovio stretches one to the other; we keep the durations of the file",
    };

    [Theory]
    [MemberData(nameof(Scores))]
    public void AScore_BecomesASheetWithoutErrors_AndPlaysTheNotesAnotherReaderPlays(string name)
    {
        Assert.SkipWhen(name.Length == 0, "The check values are not beside the checkout.");
        var file = File.ReadAllBytes(Path.Combine(Repository.Check("scores")!, name));
        var made = Imported.Xml(file);
        var sheet = SheetWriter.Write(made.Song);
        var bound = Fretlore.Tests.Songs.Sheets.Bind(sheet.Text);

        SameSong.Same(Performed(made.Song), Performed(bound.Song!), name);
        if (Exceptions.ContainsKey(name)) return;

        // Grace notes, rolls, trills and tremolos are spread in time by rules of each player's own: all are taken out of both, and repeats, so that a note is counted once.
        var plain = Plain(file);
        var ours = Imported.Xml(plain);
        var (missing, anew) = (Count(ours, "A note "), Count(ours, "A tie "));
        var played = Sorted(PlayedXml.From(Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(plain))).Notes.Select(n => (n.Onset, n.Key)));
        var mine = Sorted(Performer.Play(ours.Song).Parts.SelectMany(p => p.Notes).Select(n => (n.Onset.ToDouble(), n.Height.Midi)));
        var more = mine.ToList();
        var less = new List<string>();
        foreach (var note in played)
        {
            if (!more.Remove(note)) less.Add(note);
        }
        Assert.True(more.Count <= anew && less.Count <= missing, $"{name}: {played.Count} notes, {less.Count} missing of which {missing} are reported, {more.Count} more of which {anew} are reported.\n"
            + $"missing {string.Join(' ', less.Take(30))}\nmore {string.Join(' ', more.Take(30))}\n{Imported.Text(ours.Remarks)}");
    }

    // A note before two endings may be held on in the one and not in the other; on the page it stands once.
    private static string Performed(Song song) => SameSong.Performed(song with
    {
        Parts = song.Parts.Select(p => p with
        {
            Bars = p.Bars.Select(b => b with
            {
                Strands = b.Strands.Select(s => s with { Events = s.Events.Select(e => e with { Notes = e.Notes.Select(n => n with { IsHeldOn = false }).ToValueList() }).ToValueList() }).ToValueList(),
            }).ToValueList(),
        }).ToValueList(),
    });

    // Remarks of one sort beyond the first twenty are told as a number.
    private static int Count(ImportResult.Made made, string begins) => made.Remarks.Where(r => r.Text.StartsWith(begins, StringComparison.Ordinal))
        .Sum(r => r.Text.Split("The same ") is [_, var more] ? int.Parse(more.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture) : 1);

    private static byte[] Plain(byte[] file)
    {
        using var archive = new ZipArchive(new MemoryStream(file));
        using var stream = archive.Entries.First(e => e.FullName.EndsWith(".xml", StringComparison.Ordinal) && !e.FullName.StartsWith("META-INF", StringComparison.Ordinal)).Open();
        var document = XDocument.Load(stream);
        document.Descendants("note").Where(n => n.Element("grace") is not null || n.Element("cue") is not null).Remove();
        // Jumps are not carried over, which the report says.
        document.Descendants("sound").Attributes().Where(a => a.Name.LocalName is "dacapo" or "dalsegno" or "tocoda" or "fine" or "coda" or "segno").Remove();
        document.Descendants("direction").Where(d => d.Descendants().Any(e => e.Name.LocalName is "segno" or "coda")).Remove();
        foreach (var note in document.Descendants("note").Where(n => n.Descendants("tremolo").Any(t => t.Attribute("type")?.Value is "start" or "stop")).ToList())
        {
            // Two notes in alternation are written with twice their value.
            note.Element("type")!.Value = note.Element("type")!.Value switch { "whole" => "half", "half" => "quarter", "quarter" => "eighth", var other => other };
            note.Elements("time-modification").Remove();
        }
        document.Descendants("notations").Elements().Where(e => e.Name.LocalName is "ornaments" or "arpeggiate" or "fermata" or "articulations").Remove();
        document.Descendants("barline").Elements().Where(e => e.Name.LocalName is "repeat" or "ending").Remove();
        return Encoding.UTF8.GetBytes(document.ToString());
    }

    // Verovio's own file has 120 ticks a quarter note and rounds the places of triplets to them.
    private static List<string> Sorted(IEnumerable<(double Onset, int Key)> notes) =>
        [.. notes.Select(n => (Onset: Math.Round(n.Onset * 24), n.Key)).OrderBy(n => n.Onset).ThenBy(n => n.Key).Select(n => $"{n.Onset / 24:0.##}:{n.Key}")];
}
