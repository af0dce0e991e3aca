using Fretlore.Exchange.Import;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Exchange.Import;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>Real scores (OpenScore Lieder, CC0) as we import them, against how npm verovio 6.3.0 plays them.</summary>
public sealed class ImportedScoreChecks(PlayedScores played) : IClassFixture<PlayedScores>
{
    public static TheoryData<string> Scores => [.. PlayedScores.Names.DefaultIfEmpty("")];

    [Theory]
    [MemberData(nameof(Scores))]
    public void AScore_BecomesASheetWithoutErrors_AndPlaysTheNotesAnotherReaderPlays(string name)
    {
        Assert.SkipWhen(name.Length == 0, "The check values are not beside the checkout.");
        var file = PlayedScores.Read(name);
        var made = Imported.Xml(file);
        var sheet = SheetWriter.Write(made.Song);
        var bound = Fretlore.Tests.Songs.Sheets.Bind(sheet.Text);

        SameSong.Same(Performed(made.Song), Performed(bound.Song!), name);
        if (PlayedScores.Exceptions.ContainsKey(name)) return;

        // Grace notes, rolls, trills and tremolos are spread in time by rules of each player's own: all are taken out of both, and repeats, so that a note is counted once.
        var ours = Imported.Xml(PlayedScores.Plain(file));
        var (missing, anew) = (Count(ours, "A note "), Count(ours, "A tie "));
        var theirs = Sorted(played.Of(name).Notes.Select(n => (n.Onset, n.Key)));
        var mine = Sorted(Performer.Play(ours.Song).Parts.SelectMany(p => p.Notes).Select(n => (n.Onset.ToDouble(), n.Height.Midi)));
        var more = mine.ToList();
        var less = new List<string>();
        foreach (var note in theirs)
        {
            if (!more.Remove(note)) less.Add(note);
        }
        Assert.True(more.Count <= anew && less.Count <= missing, $"{name}: {theirs.Count} notes, {less.Count} missing of which {missing} are reported, {more.Count} more of which {anew} are reported.\n"
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

    // Verovio's own file has 120 ticks a quarter note and rounds the places of triplets to them.
    private static List<string> Sorted(IEnumerable<(double Onset, int Key)> notes) =>
        [.. notes.Select(n => (Onset: Math.Round(n.Onset * 24), n.Key)).OrderBy(n => n.Onset).ThenBy(n => n.Key).Select(n => $"{n.Onset / 24:0.##}:{n.Key}")];
}
