using System.Collections.Immutable;
using Fretlore.Exchange.Sheets;
using Fretlore.Listening.Alignment;
using Fretlore.Listening.Takes;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Listening;

/// <summary>What became of lining a take up.</summary>
public abstract record TakeAnswer
{
    private TakeAnswer()
    {
    }

    public sealed record Found(LinedUpTake Take) : TakeAnswer;

    /// <summary>The take can't be lined up.</summary>
    /// <param name="Message">What is wrong, a whole sentence.</param>
    /// <param name="Remedy">What to do about it.</param>
    public sealed record Refused(string Message, string Remedy) : TakeAnswer;
}

/// <summary>When does each bar of the sheet begin in a take?</summary>
/// <param name="Name">The take's file name, as the sheet will say it.</param>
/// <param name="Parts">Indexes of the parts that are heard in it; none for all.</param>
public sealed record TakeQuestion(string Name, IReadOnlyList<int> Parts)
{
    private static readonly TimeSpan Exact = TimeSpan.FromMilliseconds(12);

    /// <param name="workspace">A sheet with a song.</param>
    /// <param name="file">The take, a WAV file; can be sought, left open.</param>
    /// <param name="cancel">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="IOException">The file can't be read.</exception>
    public TakeAnswer Ask(SongWorkspace workspace, Stream file, CancellationToken cancel = default)
    {
        var song = workspace.Song ?? throw new InvalidOperationException("A sheet without a song has no bars to find.");
        var read = TakeReader.Read(file, cancel);
        if (read is TakeResult.Refused(var message, var remedy)) return new TakeAnswer.Refused(message, remedy);
        var performed = Performer.Play(song);
        var parts = Parts.Count > 0 ? Parts : [.. Enumerable.Range(0, song.Parts.Count)];
        if (!parts.Any(part => performed.Parts[part].Notes.Length > 0)) return new TakeAnswer.Refused("The sheet has no notes to listen for.", "Choose parts that play.");
        var aligned = TakeAligner.Align(performed, [.. parts], ((TakeResult.Read)read).Take, cancel);
        if (aligned is null || !aligned.Bars.Any(bar => bar.Seconds is not null))
        {
            return new TakeAnswer.Refused("None of the song's bars can be in the take.", "Check that it is a take of this song.");
        }
        return new TakeAnswer.Found(LineUp(workspace, song, performed, aligned));
    }

    private LinedUpTake LineUp(SongWorkspace workspace, Song song, PerformedSong performed, AlignedTake aligned)
    {
        var times = new Dictionary<int, int>();
        ImmutableArray<LinedUpBar> bars =
        [
            .. aligned.Bars.Select(bar =>
            {
                var number = NumberOf(song, performed.Bars[bar.Index].Bar);
                times[number] = times.GetValueOrDefault(number) + 1;
                return new LinedUpBar(number, times[number], bar.Seconds is { } at ? TimeSpan.FromMilliseconds(Math.Round(at * 1000)) : null, bar.Unlike);
            }),
        ];
        var recording = new Recording(Name, new([.. Needed(bars, performed).Select(i => new RecordedBar(bars[i].Number, bars[i].Time, bars[i].At!.Value))]));
        var block = RecordingText.Of(recording);
        return new LinedUpTake(bars, recording, block, WithBlock(workspace.Sheet, block), aligned.Unlike, aligned.TuningCents);
    }

    // Bars without which those between two others would not be found by going evenly (Ramer, Douglas and Peucker).
    private static SortedSet<int> Needed(ImmutableArray<LinedUpBar> bars, PerformedSong performed)
    {
        // A later pickup has no number to call it by, and times go forward in a sheet.
        var known = new List<int>();
        for (var i = 0; i < bars.Length; i++)
        {
            if (bars[i].At is { } at && (known.Count == 0 || at > bars[known[^1]].At) && (i == 0 || !performed.Song.Bars[performed.Bars[i].Bar].IsPickup)) known.Add(i);
        }
        var needed = new SortedSet<int> { known[0], known[^1] };
        Divide(0, known.Count - 1);
        return needed;

        void Divide(int first, int last)
        {
            double At(int k) => bars[known[k]].At!.Value.TotalSeconds;
            double Written(int k) => performed.Bars[known[k]].StartSeconds;
            var (worst, off) = (-1, Exact.TotalSeconds);
            for (var k = first + 1; k < last; k++)
            {
                var even = At(first) + (At(last) - At(first)) * (Written(k) - Written(first)) / (Written(last) - Written(first));
                if (Math.Abs(At(k) - even) > off) (worst, off) = (k, Math.Abs(At(k) - even));
            }
            if (worst < 0) return;
            needed.Add(known[worst]);
            Divide(first, worst);
            Divide(worst, last);
        }
    }

    private static int NumberOf(Song song, int bar) => song.Bars[bar].IsPickup && bar == 0 ? 0 : song.Bars[bar].Number;

    // What is typed around it stays as it is, its kind of line ends too.
    private string WithBlock(ParsedSheet sheet, string block)
    {
        var text = sheet.Text.Text;
        var end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        block = block.ReplaceLineEndings(end);
        var before = sheet.Root.Blocks.OfType<RecordingSyntax>().FirstOrDefault(written => !written.Name.IsMissing && Unquoted(written.Name.Text) == Name);
        if (before is null) return text + (text.Length == 0 || text.EndsWith(end + end, StringComparison.Ordinal) ? "" : text.EndsWith('\n') ? end : end + end) + block;
        var (from, to) = (before.Span.Start, before.Span.End);
        var times = block.IndexOf(end, StringComparison.Ordinal);
        return text[..from] + block[..times] + string.Concat(CommentsIn(text[from..to]).Select(comment => $"{end}  {comment}")) + block[times..].TrimEnd() + text[to..];
    }

    // Times are found anew; what somebody wrote beside them is not.
    private static IEnumerable<string> CommentsIn(string block)
    {
        foreach (var line in block.Split('\n'))
        {
            var from = line.LastIndexOf('"') + 1;
            for (var at = line.IndexOf("--", from, StringComparison.Ordinal); at >= 0; at = line.IndexOf("--", at + 1, StringComparison.Ordinal))
            {
                if (at > 0 && !char.IsWhiteSpace(line[at - 1])) continue;
                yield return line[at..].TrimEnd();
                break;
            }
        }
    }

    private static string Unquoted(string text) => text.Trim('"');
}
