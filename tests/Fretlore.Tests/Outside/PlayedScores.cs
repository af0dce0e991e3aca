using System.IO.Compression;
using System.Text;
using System.Xml.Linq;

namespace Fretlore.Tests.Outside;

/// <summary>The real scores beside the checkout, as npm verovio 6.3.0 plays them: all in one run, the first time one is asked for.</summary>
public sealed class PlayedScores
{
    /// <summary>Scores that verovio can't be asked about, with the reason.</summary>
    public static readonly Dictionary<string, string> Exceptions = new(StringComparer.Ordinal)
    {
        ["lc6588520.mxl"] = "verovio 6.3.0 ends with an access out of bounds when it makes MIDI of this score",
        ["lc5904752.mxl"] = "notes alternate in tremolos through the last page, which each player spreads by a rule of its own",
        ["lc6903010.mxl"] = "two parts have different metres at once, and verovio stretches one to the other; we keep the durations of the file",
    };

    private readonly Lazy<Dictionary<string, PlayedXml>> played = new(() =>
    {
        var names = Names.Where(n => !Exceptions.ContainsKey(n)).ToList();
        return names.Zip(PlayedXml.From(names.ConvertAll(n => Plain(Read(n))))).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal);
    });

    /// <summary>The files' names; none when the check values are not there.</summary>
    public static IReadOnlyList<string> Names => Repository.Check("scores") is { } folder ? [.. Directory.GetFiles(folder, "*.mxl").Select(f => Path.GetFileName(f)).Order()] : [];

    public static byte[] Read(string name) => File.ReadAllBytes(Path.Combine(Repository.Check("scores")!, name));

    internal PlayedXml Of(string name) => played.Value[name];

    /// <summary>A score without what each player spreads in time by rules of its own, and without repeats and jumps.</summary>
    public static byte[] Plain(byte[] file)
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
}
