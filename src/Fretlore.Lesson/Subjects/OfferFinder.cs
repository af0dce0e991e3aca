using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>Finds what of a song is worth teaching: its riffs, bars that come again without a name, and bars that stand out or are hard.</summary>
internal sealed class OfferFinder(PerformedSong played, SongReading reading, SongHands hands, SubjectReader subjects)
{
    /// <summary>A line shorter than this has no peaks of its own: it is taught whole.</summary>
    private const int LeastBarsForPeaks = 4;

    private readonly Song song = played.Song;

    /// <summary>Riffs first, in the order they are heard; then repeats, then peaks. Each bar is offered once.</summary>
    public ValueList<Offer> Find()
    {
        var offers = new List<Offer>();
        var first = song.RiffUses.GroupBy(u => u.Riff).ToDictionary(g => g.Key, g => g.Min(u => u.FirstBar));
        foreach (var riff in song.Riffs.Where(r => !r.IsSilent()).OrderBy(r => first.GetValueOrDefault(r.Name, int.MaxValue)))
        {
            offers.Add(Of(new Taught(riff.Name), OfferKind.Riff, riff.VariationOf is { } model ? [$"It varies {RiffTeller.RiffName(SpokenName.Of(model))}."] : []));
        }
        for (var part = 0; part < song.Parts.Count; part++) offers.AddRange(Repeats(part));
        foreach (var riff in song.Riffs.Where(r => r.Bars.Count >= LeastBarsForPeaks)) offers.AddRange(PeaksOf(riff));
        for (var part = 0; part < song.Parts.Count; part++) offers.AddRange(PeaksOf(part));
        return offers.DistinctBy(MusicOf).ToValueList();
    }

    // The same bars in another section are the same offer.
    private static ValueList<BarForm> MusicOf(Offer offer) => offer.Subject.Lines.SelectMany(l => l.Riff.Content).Select(BarForm.Of).ToValueList();

    private Offer Of(Taught what, OfferKind kind, ValueList<string> because)
    {
        var subject = subjects.Of(what);
        // How often bars come that come again elsewhere is what makes them an offer; the subject knows only the place pointed at.
        return new Offer(subject, kind, kind == OfferKind.Repeat ? because : subject.Why.Breaths.Concat(because).ToValueList());
    }

    private IEnumerable<Offer> Repeats(int part)
    {
        var free = Free(part);
        bool[] starts = [.. Enumerable.Range(0, song.Bars.Count).Select(bar => song.Sections.Any(s => s.FirstBar == bar))];
        foreach (var run in RepeatedBars.Of(song.Parts[part], free, starts))
        {
            if (Point(part, run.Starts[0], run.Length) is not { } what) continue;
            var because = new List<string> { $"The same {Bars(run.Length)} {(run.Length == 1 ? "comes" : "come")} {NumberWords.Times(run.Starts.Count)} in the part." };
            if (Like(part, run) is { } like) because.Add(like);
            yield return Of(what, OfferKind.Repeat, because.ToValueList());
        }
    }

    // Bars of a part that no riff covers.
    private bool[] Free(int part)
    {
        var free = Enumerable.Repeat(true, song.Bars.Count).ToArray();
        foreach (var use in song.RiffUses.Where(u => u.Part == part)) Array.Fill(free, false, use.FirstBar, use.BarCount);
        return free;
    }

    // "It is nearly the furnace riff: bar two differs."
    private string? Like(int part, RepeatedRun run)
    {
        BarForm[] forms = [.. song.Parts[part].Bars.Skip(run.Starts[0]).Take(run.Length).Select(BarForm.Of)];
        foreach (var riff in song.Riffs.Where(r => r.Content.Count == run.Length && run.Length > 1))
        {
            int[] differ = [.. Enumerable.Range(0, run.Length).Where(i => BarForm.Of(riff.Content[i]) != forms[i])];
            if (differ.Length > 0 && differ.Length * 3 <= run.Length) return $"It is nearly {RiffTeller.RiffName(SpokenName.Of(riff.Name))}: {(differ.Length == 1 ? "bar" : "bars")} {SpokenList.Joined(differ.Select(i => NumberWords.Of(i + 1)), "and")} {(differ.Length == 1 ? "differs" : "differ")}.";
        }
        return null;
    }

    private IEnumerable<Offer> PeaksOf(Riff riff)
    {
        var loads = hands.Riffs[song.Riffs.Items.IndexOf(riff)].Bars;
        foreach (var (first, count, kind) in Peaks(riff.Content, loads, _ => true))
        {
            var range = new BarRange(riff.Bars[first].Number, riff.Bars[first + count - 1].Number);
            yield return Of(new Taught(riff.Name, range), kind, Because(kind, RiffTeller.RiffName(SpokenName.Of(riff.Name)), [.. loads.Skip(first).Take(count)]));
        }
    }

    private IEnumerable<Offer> PeaksOf(int part)
    {
        var free = Free(part);
        foreach (var section in song.Sections)
        {
            var line = song.Parts[part].Bars.Items.Slice(section.FirstBar, section.BarCount);
            if (line.Length < LeastBarsForPeaks) continue;
            var loads = hands.Parts[part].Bars.Slice(section.FirstBar, section.BarCount);
            foreach (var (first, count, kind) in Peaks(line.ToValueList(), loads, bar => free[section.FirstBar + bar]))
            {
                if (Point(part, section.FirstBar + first, count) is not { } what) continue;
                yield return Of(what, kind, Because(kind, SectionWords.Of(section.Name), [.. loads.Skip(first).Take(count)]));
            }
        }
    }

    // Bars that stand out; where they do so by being hard, that is said instead.
    private IEnumerable<(int First, int Count, OfferKind Kind)> Peaks(ValueList<PartBar> line, ImmutableArray<HandLoad> loads, Func<int, bool> isFree)
    {
        var points = new BarInterest(reading, line).Points();
        var hardest = loads.Select(l => l.Difficulty).DefaultIfEmpty(Difficulty.None).Max();
        var taken = new HashSet<int>();
        foreach (var peak in BarInterest.Peaks(points))
        {
            var (first, count) = Phrase(line, peak);
            if (!Enumerable.Range(first, count).All(bar => isFree(bar) && taken.Add(bar))) continue;
            var isHard = hardest >= Difficulty.Demanding && Enumerable.Range(first, count).Any(bar => loads[bar].Difficulty == hardest);
            yield return (first, count, isHard ? OfferKind.Hard : OfferKind.Peak);
        }
    }

    // The bar, and the next one where the line runs on into it.
    private static (int First, int Count) Phrase(ValueList<PartBar> line, int bar)
    {
        if (bar + 1 >= line.Count || line[bar + 1].Strands.Count == 0) return (bar, 1);
        var runsOn = line[bar + 1].Strands[0].Events is [{ Notes: [{ IsTiedFromBefore: true }, ..] }, ..];
        return (bar, runsOn ? 2 : 1);
    }

    private static ValueList<string> Because(OfferKind kind, string of, HandLoad[] loads)
    {
        if (kind != OfferKind.Hard) return [$"It stands out in {of}."];
        var reasons = loads.SelectMany(l => l.Reasons).Distinct().Take(2).ToArray();
        return [reasons.Length == 0 ? $"It is the hardest place of {of}." : $"It is the hardest place of {of}: {string.Join("; ", reasons)}."];
    }

    // Bars of a part by the section they stand in, as the sheet would point at them.
    private Taught? Point(int part, int firstBar, int count)
    {
        var section = song.Sections.FirstOrDefault(s => s.FirstBar <= firstBar && firstBar + count <= s.FirstBar + s.BarCount);
        if (section is null) return null;
        var first = firstBar - section.FirstBar + 1;
        return new Taught(section.Name, new BarRange(first, first + count - 1), song.Parts.Count > 1 ? song.Parts[part].Name : null);
    }

    private static string Bars(int count) => count == 1 ? "bar" : NumberWords.Of(count) + " bars";
}
