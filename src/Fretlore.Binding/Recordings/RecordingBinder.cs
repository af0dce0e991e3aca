using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Recordings;

/// <summary>Binds the recordings a sheet lines up, once the song's bars stand in the order played.</summary>
internal static class RecordingBinder
{
    private static readonly TimeSpan Longest = TimeSpan.FromHours(10);

    public static Song Bind(SheetSyntax sheet, Song song, DiagnosticBag problems)
    {
        var recordings = new List<Recording>();
        ImmutableArray<PlayedBar>? played = null;
        foreach (var written in sheet.Blocks.OfType<RecordingSyntax>())
        {
            if (written.Name.IsMissing) continue;
            var name = SheetWord.Unquote(written.Name.Text);
            if (recordings.Exists(r => r.Name == name)) problems.Add(NameProblems.DeclaredTwice(written.Name, "recording"));
            var bars = BarsOf(written, song, played ??= PlayOrder.Of(song.Bars), problems);
            if (written.Bars.IsEmpty) problems.Add(RecordingProblems.NoBars(written.Name.Span, name));
            recordings.Add(new Recording(name, bars));
        }
        return recordings.Count == 0 ? song : song with { Recordings = recordings.ToValueList() };
    }

    private static ValueList<RecordedBar> BarsOf(RecordingSyntax written, Song song, ImmutableArray<PlayedBar> played, DiagnosticBag problems)
    {
        var bars = new List<RecordedBar>();
        var last = -1;
        foreach (var line in written.Bars)
        {
            if (line.Word.Text != "bar") continue; // reported by the parser
            if (Read(SheetWord.From(line.Values)) is not { } bar)
            {
                problems.Add(RecordingProblems.NoBarTime(line.Span));
                continue;
            }
            var places = PlayOrder.PlacesOf(song.Bars, played, bar.Number);
            if (bar.Time > places.Length) problems.Add(RecordingProblems.BarNotPlayed(line.Span, bar.Number, bar.Time, places.Length));
            else if (places[bar.Time - 1] <= last) problems.Add(RecordingProblems.BarOutOfOrder(line.Span, bar.Number, bars[^1].Number));
            else if (bars.Count > 0 && bar.At <= bars[^1].At) problems.Add(RecordingProblems.TimeGoesBack(line.Span));
            else
            {
                bars.Add(bar);
                last = places[bar.Time - 1];
            }
        }
        return bars.ToValueList();
    }

    // 9 at 0:18.94, 9 time 2 at 0:52.31
    private static RecordedBar? Read(ImmutableArray<SheetWord> words)
    {
        var time = 1;
        if (words.Length == 5 && words[1].Is("time") && Numerals.Of(words[2].Text) is { } said and > 0)
        {
            time = said;
            words = words.RemoveRange(1, 2);
        }
        return words.Length == 3 && Numerals.Of(words[0].Text) is { } number && words[1].Is("at") && At(words[2].Text) is { } at ? new RecordedBar(number, time, at) : null;
    }

    private static TimeSpan? At(string text)
    {
        if (text.Split(':') is not [var minutes, var seconds] || Numerals.Of(minutes) is not { } m || m > Longest.TotalMinutes) return null;
        if (!char.IsAsciiDigit(seconds.FirstOrDefault()) || !decimal.TryParse(seconds, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var s)) return null;
        // To the millisecond: finer than anyone hears.
        return s < 60 ? TimeSpan.FromMilliseconds((m * 60_000L) + (long)Math.Round(s * 1000)) : null;
    }
}
