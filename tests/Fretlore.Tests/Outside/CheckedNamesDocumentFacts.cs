using System.Globalization;
using System.Text;
using Fretlore.Reading.Chords;

namespace Fretlore.Tests.Outside;

/// <summary>docs/names-checked.md lists every chord that other people's data calls something else.</summary>
public class CheckedNamesDocumentFacts
{
    private static string Document => Path.Combine(Repository.Root, "docs", "names-checked.md");

    [Fact]
    public void Document_ListsWhatTheChecksFind()
    {
        var expected = Text();
        // With this set the page is written anew instead of compared.
        if (Environment.GetEnvironmentVariable("FRETLORE_WRITE_DOCS") is "1") File.WriteAllText(Document, expected);
        var actual = File.Exists(Document) ? File.ReadAllText(Document).ReplaceLineEndings("\n") : "";
        Assert.True(expected == actual, "docs/names-checked.md is stale: run the tests once with FRETLORE_WRITE_DOCS=1.");
    }

    private static string Text()
    {
        var page = new StringBuilder("""
            # Chord names held against other people's data

            A test writes this page and holds it. Everything is told on C, the notes from the lowest up.

            ## An open dataset of 2,069 guitar positions

            The npm package `@tombatossals/chords-db` 0.5.1 (MIT) names the position it was looking for; we name what sounds. Here is every kind of position
            that gets another name first from us, or that is not what the dataset calls it, with the side that is right.


            """.ReplaceLineEndings("\n"));
        page.Append("| the dataset | it sounds | positions | ours | right | why |\n| --- | --- | --- | --- | --- | --- |\n");
        foreach (var kind in ChordDatasetChecks.Differing().OrderBy(kind => kind.Key, StringComparer.Ordinal))
        {
            var verdict = ChordDatasetVerdicts.All[kind.Key];
            page.Append(CultureInfo.InvariantCulture, $"| {NameOnC(kind.First())} | {NotesOnC(kind.First())} | {kind.Count()} | {verdict.Ours} | {Word(verdict.Side)} | {verdict.Why} |\n");
        }
        page.Append("""

            ## The 106 chord types of a music theory library

            The npm package `tonal` 6.4.2 (MIT), each type on twelve roots, root lowest. All of three notes or more keep their root with us but these, which are the
            same notes over the same bass as a commoner chord:

            | its symbol | ours | why |
            | --- | --- | --- |

            """.ReplaceLineEndings("\n"));
        foreach (var (symbol, (ours, why)) in TonalChecks.CommonerNames) page.Append(CultureInfo.InvariantCulture, $"| C{symbol} | {ours} | {why} |\n");
        return page.ToString();
    }

    private static string Word(ChordDatasetVerdicts.Side side) => side switch
    {
        ChordDatasetVerdicts.Side.Mistake => "ours: a slip in the data",
        ChordDatasetVerdicts.Side.Dataset => "the dataset",
        _ => side.ToString().ToLowerInvariant(),
    };

    private static string NameOnC(ChordDatasetChecks.Position position) => position.Suffix.IndexOf('/', StringComparison.Ordinal) is var slash && slash >= 0
        ? $"C{position.Suffix[..slash]}/{NotesOnC(position).Split(' ')[0]}"
        : $"C{position.Suffix}".Replace("Cmajor", "C", StringComparison.Ordinal);

    private static string NotesOnC(ChordDatasetChecks.Position position)
    {
        var heights = position.Heights.Order().Select(h => h + (12 - position.Root)).ToArray();
        var names = ChordNamer.Name(heights).Candidates[0].Notes.Append(ChordNamer.Name(heights).Candidates[0].Bass).ToList();
        return string.Join(' ', heights.Select(h => names.First(n => n.PitchClass == h.PitchClass)).Distinct());
    }
}
