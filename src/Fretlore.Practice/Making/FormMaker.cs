using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Practice.Data;
using Fretlore.Score;

namespace Fretlore.Practice.Making;

/// <summary>The song's form in time: bars, beats, and stretches with names, in the order played.</summary>
internal sealed class FormMaker(PerformedSong performed)
{
    private readonly Song song = performed.Song;

    public IReadOnlyList<BarData> Bars() => [.. song.Bars.Select(bar => new BarData(bar.Number, bar.IsPickup, bar.Meter.ToString()))];

    public IReadOnlyList<PlayedBarData> Played() => [.. performed.Bars.Select(PlayedOf)];

    /// <summary>Sections, riffs and free stretches, each as often as it is played, in order of time.</summary>
    public IReadOnlyList<StretchData> Stretches()
    {
        var all = song.Sections.SelectMany(s => Times("section", s.Name, null, s.FirstBar, s.BarCount))
            .Concat(song.RiffUses.SelectMany(u => Times("riff", u.Riff, u.Part, u.FirstBar, u.BarCount)))
            .Concat(song.RoadMapUses.SelectMany(u => Times("free", u.RoadMap, u.Part, u.FirstBar, u.BarCount)));
        return [.. all.OrderBy(s => s.First)];
    }

    /// <summary>Recordings with at least one bar that is played.</summary>
    public IReadOnlyList<RecordingData> Recordings()
    {
        if (song.Recordings.Count == 0) return [];
        var played = PlayOrder.Of(song.Bars);
        return
        [
            .. from recording in song.Recordings
               let points = recording.Bars.Items.SelectMany(bar => PlayOrder.PlacesOf(song.Bars, played, bar.Number).Skip(bar.Time - 1).Take(1)
                   .Select(at => new SyncData(Seconds.Rounded(performed.Bars[at].StartSeconds), Seconds.Rounded(bar.At.TotalSeconds)))).ToArray()
               where points.Length > 0
               select new RecordingData(recording.Name, points),
        ];
    }

    // Written bars can come several times: a stretch is a run of played bars inside them. A riff that starts over is played again; a section with
    // a repeat in it is still one.
    private IEnumerable<StretchData> Times(string kind, string name, int? part, int firstBar, int barCount)
    {
        for (var i = 0; i < performed.Bars.Length;)
        {
            if (!IsInside(i))
            {
                i++;
                continue;
            }
            var start = i++;
            while (i < performed.Bars.Length && IsInside(i) && (kind != "riff" || performed.Bars[i].Bar > performed.Bars[i - 1].Bar)) i++;
            yield return new StretchData(kind, name, part, start, i - start);
        }

        bool IsInside(int played) => performed.Bars[played].Bar >= firstBar && performed.Bars[played].Bar < firstBar + barCount;
    }

    private PlayedBarData PlayedOf(PerformedBar played)
    {
        var bar = song.Bars[played.Bar];
        var missing = bar.IsPickup ? Beats.Max(bar.Meter.Length - bar.Length, Beats.Zero) : Beats.Zero;
        var starts = BeatsOf(bar.Meter).ToArray();
        var beats = starts.Where(at => at >= missing && at - missing < bar.Length)
            .Select(at => Seconds.Rounded(performed.Tempo.SecondsAt(played.Start + at - missing)));
        // The tempo that the bar starts at counts it in.
        var quarter = performed.Tempo.Changes.Last(change => change.At <= played.Start).Tempo.SecondsPerQuarter;
        var before = starts.Concat(starts.Select(at => bar.Meter.Length + at).TakeWhile(at => at < bar.Meter.Length + missing)).ToArray();
        var end = bar.Meter.Length + missing;
        var count = before.Select((at, i) => Seconds.Rounded(((i + 1 < before.Length ? before[i + 1] : end) - at).ToDouble() * quarter));
        return new PlayedBarData(
            played.Bar, played.Pass, Seconds.Rounded(played.StartSeconds), Math.Round(60 / quarter, 3), [.. beats], [.. count]);
    }

    private static IEnumerable<Beats> BeatsOf(Meter meter)
    {
        var at = Beats.Zero;
        foreach (var group in meter.Groups)
        {
            yield return at;
            at += Beats.Of(4, meter.Unit) * group;
        }
    }
}
