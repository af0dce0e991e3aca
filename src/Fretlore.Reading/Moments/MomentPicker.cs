using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>Chooses which chords of a part get a symbol: one where the harmony changes, no more than a player can read in time.</summary>
internal sealed class MomentPicker(Song song, IReadOnlyList<List<Segment>> bars)
{
    private readonly HashSet<int> fresh = FreshBars(song);

    /// <param name="overrides">Places where the sheet says the symbol, with the candidates for what sounds there.</param>
    internal ImmutableArray<ChordMoment> Pick(IReadOnlyList<ChordMoment> overrides)
    {
        var moments = ImmutableArray.CreateBuilder<ChordMoment>();
        MeasureRuns();
        string? shown = null;
        var stated = 0;
        var grid = new BeatGrid(Meter.FourFour);
        for (var bar = 0; bar < bars.Count; bar++)
        {
            if (fresh.Contains(bar) || bars[bar].Count == 0) shown = null;
            var chosen = new List<(Segment Segment, double Weight)>();
            grid = grid.For(song.Bars[bar].Meter);
            foreach (var segment in bars[bar])
            {
                if (segment.Best is not { } best || !Deserves(segment)) continue;
                if (best.Symbol == (chosen.Count > 0 ? chosen[^1].Segment.Best?.Symbol : shown)) continue;
                var weight = Math.Min(segment.RunLength, 4) + (grid.IsOnBeat(segment.Start) ? 0.5 : 0) + (segment.IsAccented ? 0.5 : 0);
                chosen.Add((segment, weight));
            }
            Thin(chosen, Math.Max(grid.Count, 3));
            var first = moments.Count;
            foreach (var (segment, _) in chosen)
            {
                if (segment.Naming is { } naming) moments.Add(new ChordMoment(bar, segment.Start, naming.Candidates, null));
                shown = segment.Best?.Symbol;
            }
            for (; stated < overrides.Count && overrides[stated].Bar == bar; stated++)
            {
                var place = first;
                while (place < moments.Count && moments[place].At < overrides[stated].At) place++;
                if (place < moments.Count && moments[place].At == overrides[stated].At) moments.RemoveAt(place);
                moments.Insert(place, overrides[stated]);
                if (place == moments.Count - 1) shown = overrides[stated].Best.Symbol;
            }
        }
        return moments.ToImmutable();
    }

    // A quarter note's worth is always read; an eighth's when it is not muted; less only when it is accented.
    private static bool Deserves(Segment segment) =>
        segment.RunLength >= 1 || segment.RunLength >= 0.5 && !segment.IsPalmMuted || segment.IsAccented && segment.MostStruck > 1;

    // The most common symbol of too full a bar stays; the lightest of the others go.
    private static void Thin(List<(Segment Segment, double Weight)> chosen, int most)
    {
        while (chosen.Count > most)
        {
            var lightest = 0;
            for (var i = 1; i < chosen.Count; i++)
            {
                if (chosen[i].Weight < chosen[lightest].Weight) lightest = i;
            }
            chosen.RemoveAt(lightest);
            if (lightest > 0 && lightest < chosen.Count && chosen[lightest].Segment.Best?.Symbol == chosen[lightest - 1].Segment.Best?.Symbol)
            {
                chosen.RemoveAt(lightest);
            }
        }
    }

    // How long each chord's name stays the same from its first stretch on.
    private void MeasureRuns()
    {
        var run = new List<Segment>();
        var length = 0.0;
        foreach (var segment in bars.SelectMany(b => b))
        {
            if (run.Count > 0 && run[^1].Best?.Symbol != segment.Best?.Symbol)
            {
                foreach (var member in run) member.RunLength = length;
                run.Clear();
                length = 0;
            }
            run.Add(segment);
            length += segment.Length;
        }
        foreach (var member in run) member.RunLength = length;
    }

    // Where a player's eye may land: sections, repeats and endings say their chord again.
    private static HashSet<int> FreshBars(Song song)
    {
        var fresh = song.Sections.Select(s => s.FirstBar).ToHashSet();
        for (var bar = 0; bar < song.Bars.Count; bar++)
        {
            if (song.Bars[bar].StartsRepeat || song.Bars[bar].StartsEnding) fresh.Add(bar);
        }
        return fresh;
    }
}
