using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>A way to lose less: the whole song moved, or a capo.</summary>
/// <param name="Order">The order that does it.</param>
/// <param name="Losses">How many things are lost then.</param>
public sealed record RetuneOffer(RetuneOrder Order, int Losses);

/// <summary>Looks for another key or a capo with which less is lost.</summary>
public static class RetuneOffers
{
    private const int MostSemitones = 11;
    private const int HighestCapo = 7;

    /// <summary>An offer has to save at least this share of what is lost.</summary>
    private const double WorthOffering = 0.5;

    /// <summary>The best transposition and the best capo, where they save at least half of what is lost.</summary>
    /// <param name="song">The song.</param>
    /// <param name="order">What was asked for.</param>
    /// <param name="retuned">What came of it.</param>
    public static ValueList<RetuneOffer> Find(Song song, RetuneOrder order, RetunedSong retuned)
    {
        if (retuned.Weight == 0) return [];
        var keys = order.Semitones == 0 ? Enumerable.Range(-MostSemitones, 2 * MostSemitones + 1).Where(t => t != 0).Select(t => order with { Semitones = t }) : [];
        var capos = order.Capo is null ? Enumerable.Range(0, HighestCapo + 1).Select(capo => order with { Capo = Capo.At(capo) }) : [];
        var offers = new List<RetuneOffer>();
        foreach (var ways in (IEnumerable<RetuneOrder>[])[keys, capos])
        {
            var best = ways.Select(way => (Way: way, Weight: Estimate(song, way))).OrderBy(way => way.Weight).ThenBy(way => Math.Abs(way.Way.Semitones)).ThenBy(way => way.Way.Capo?.Fret).FirstOrDefault();
            if (best.Way is null || best.Weight > WorthOffering * retuned.Weight) continue;
            var tried = Retuner.Retune(song, best.Way);
            if (tried.Weight <= WorthOffering * retuned.Weight) offers.Add(new RetuneOffer(best.Way, tried.Parts.Sum(part => part.Count)));
        }
        return offers.ToValueList();
    }

    // Note by note, without looking at hands: what is on the neck at all, and what can stay open.
    private static double Estimate(Song song, RetuneOrder order)
    {
        var weight = 0.0;
        for (var part = 0; part < song.Parts.Count; part++)
        {
            var isRetuned = order.Parts.Contains(part);
            if (!isRetuned && order.Semitones == 0) continue;
            var known = new Dictionary<(int, Capo, bool, bool), double>();
            foreach (var bar in song.Parts[part].Bars)
            {
                var neck = isRetuned ? order.Moved(bar.Neck) : bar.Neck;
                foreach (var item in bar.Strands.SelectMany(strand => strand.Events))
                {
                    foreach (var note in item.Notes.Items.Where(note => !note.IsDead && note.Attack != Attack.Held))
                    {
                        var isHarmonic = note.Harmonic is { Kind: HarmonicKind.Natural };
                        var key = (note.Sounding.Midi, neck.Capo, isHarmonic, note.Fret.IsOpen);
                        if (!known.TryGetValue(key, out var cost)) known[key] = cost = Lost(neck, note.Sounding + order.Semitones, isHarmonic, note.Fret.IsOpen);
                        weight += cost;
                    }
                }
            }
        }
        return weight;
    }

    private static double Lost(Neck neck, Height wanted, bool isHarmonic, bool wasOpen)
    {
        var above = Enumerable.Range(1, neck.StringCount).Select(n => wanted - neck.Open(new StringNumber(n))).ToList();
        if (isHarmonic) return above.Exists(partial => HarmonicSeries.Nodes.Any(node => HarmonicSeries.SemitonesAbove(node.Number) == partial)) ? 0 : RetunedSong.WeightOf(RetuneLossKind.HarmonicTouched);
        if (!Enumerable.Range(1, neck.StringCount).Any(n => neck.FretOf(new StringNumber(n), wanted) is not null)) return RetunedSong.WeightOf(RetuneLossKind.OctaveMoved);
        return wasOpen && !above.Contains(0) ? RetunedSong.WeightOf(RetuneLossKind.DroneStopped) / 2 : 0;
    }
}
