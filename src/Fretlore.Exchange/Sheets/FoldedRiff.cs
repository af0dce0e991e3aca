using System.Collections.Immutable;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>A riff found in the music: bars that come back.</summary>
/// <param name="Name">Its name in the sheet.</param>
/// <param name="Part">The part it is taken from.</param>
/// <param name="First">Its first bar there.</param>
/// <param name="Count">How many bars it has.</param>
internal sealed record FoldedRiff(string Name, int Part, int First, int Count);

/// <summary>Where riffs stand instead of written-out bars.</summary>
internal sealed class FoldPlan
{
    private readonly Dictionary<(int Part, int Bar), (string Name, int Count)> plays = [];

    public List<FoldedRiff> Found { get; } = [];

    public (string Name, int Count)? At(int part, int bar) => plays.TryGetValue((part, bar), out var play) ? play : null;

    public void Play(int part, int bar, string name, int count) => plays[(part, bar)] = (name, count);

    public bool Plays(string name) => plays.Values.Any(p => p.Name == name);

    /// <summary>The first part that plays a riff, or null.</summary>
    public int? OwnerOf(string name) => plays.Where(p => p.Value.Name == name).OrderBy(p => p.Key.Bar).ThenBy(p => p.Key.Part).Select(p => (int?)p.Key.Part).FirstOrDefault();
}

/// <summary>Bars of one part that follow each other without a sign between: within these, riffs are looked for.</summary>
/// <param name="Part">The part.</param>
/// <param name="First">Its first bar.</param>
/// <param name="End">The bar after its last.</param>
internal sealed record Segment(int Part, int First, int End);

/// <summary>Finds bars that come back and makes riffs of them.</summary>
internal sealed class RiffFinder(Song song, BarKeys keys, SongChanges changes)
{
    private const int LongestRiff = 8;
    private const int MostRiffs = 40;
    private const int MostBars = 4000;
    private const int LeastGain = 8;

    private sealed record Place(int Part, int Bar, int Key, int Events, bool MayStart, bool MayEnd)
    {
        public bool IsTaken { get; set; }
    }

    /// <summary>Uses the song's own riffs where what they hold stands in the music as it is.</summary>
    public void UseNamed(FoldPlan plan, IReadOnlyList<Segment> segments)
    {
        var riffs = song.Riffs.Where(r => r.Bars.All(b => b.RepeatCount == 0 && !b.StartsRepeat && !b.IsPickup && b.EndingPasses.Count == 0)
            && r.Bars.Skip(1).All(b => b.Tempos.Count == 0 && b.FeelChange is null && b.Key == r.Bars[0].Key)
            && r.Bars[0].Tempos.Count <= 1).ToDictionary(r => r.Name);
        var taken = new HashSet<(int, int)>();
        foreach (var use in song.RiffUses.OrderByDescending(u => u.BarCount))
        {
            if (!riffs.TryGetValue(use.Riff, out var riff) || riff.Bars.Count != use.BarCount) continue;
            var segment = segments.FirstOrDefault(s => s.Part == use.Part && s.First <= use.FirstBar && use.FirstBar + use.BarCount <= s.End);
            if (segment is null || !IsSame(use, riff, segment)) continue;
            var bars = Enumerable.Range(use.FirstBar, use.BarCount).Select(b => (use.Part, b)).ToList();
            if (bars.Exists(taken.Contains)) continue;
            taken.UnionWith(bars);
            plan.Play(use.Part, use.FirstBar, use.Riff, use.BarCount);
        }
    }

    private bool IsSame(RiffUse use, Riff riff, Segment segment)
    {
        var content = song.Parts[use.Part].Bars;
        for (var i = 0; i < use.BarCount; i++)
        {
            var bar = use.FirstBar + i;
            if (bar >= song.Bars.Count || (i > 0 && changes.AnyAtStart(use.Part, bar)) || changes.AnyWithin(use.Part, bar)
                || (i < use.BarCount - 1 && changes.JumpAt(use.Part, bar) is not null) || content[bar].Neck != song.Parts[use.Part].Neck) return false;
            if (keys.Of(riff.Bars[i] with { EndLine = Plain(riff.Bars[i]) }, riff.Content[i]) != keys.Of(song.Bars[bar] with { EndLine = Plain(song.Bars[bar]) }, content[bar])) return false;
        }
        var after = use.FirstBar + use.BarCount;
        return BarKeys.StandsAlone(content[use.FirstBar]) && (after >= segment.End || MayFollow(content[after])) && HasSameLines(use, riff);
    }

    // The line after a riff's last bar may be the song's last; it is double only where the riff says so.
    private bool HasSameLines(RiffUse use, Riff riff)
    {
        for (var i = 0; i < use.BarCount; i++)
        {
            if (riff.Bars[i].EndLine == BarLine.Double && song.Bars[use.FirstBar + i].EndLine == BarLine.Single) return false;
        }
        return true;
    }

    private static BarLine Plain(Bar bar) => bar.EndLine == BarLine.Final ? BarLine.Single : bar.EndLine == BarLine.Double ? BarLine.Single : bar.EndLine;

    // What follows a played riff can hold its notes, but a joint can't see them.
    private static bool MayFollow(PartBar content) => content.Strands.All(s => s.Events.Count == 0
        || s.Events[0].Graces.Concat(s.Events[0].Notes).All(n => n.Attack is Attack.Picked or Attack.Tap or Attack.Held));

    /// <summary>Finds riffs in bars that no riff stands for yet.</summary>
    public void Find(FoldPlan plan, IReadOnlyList<Segment> segments, Func<int, int, string> nextName)
    {
        var lines = segments.Select(s => PlacesOf(s, plan)).Where(l => l.Length > 0).ToList();
        if (lines.Sum(l => l.Length) > MostBars) return;
        for (var n = 0; n < MostRiffs; n++)
        {
            if (Best(lines) is not var (occurrences, length)) return;
            var (line, start) = occurrences[0];
            var first = lines[line][start];
            var name = nextName(first.Part, first.Bar);
            plan.Found.Add(new FoldedRiff(name, first.Part, first.Bar, length));
            foreach (var (l, s) in occurrences)
            {
                plan.Play(lines[l][s].Part, lines[l][s].Bar, name, length);
                for (var i = s; i < s + length; i++) lines[l][i].IsTaken = true;
            }
        }
    }

    private Place[] PlacesOf(Segment segment, FoldPlan plan)
    {
        var content = song.Parts[segment.Part].Bars;
        var places = new List<Place>();
        var riffEnd = -1;
        var numbers = Enumerable.Range(segment.First, segment.End - segment.First).Select(b => keys.Of(song.Bars[b], content[b])).ToArray();
        for (var b = segment.First; b < segment.End; b++)
        {
            if (plan.At(segment.Part, b) is { } play) riffEnd = b + play.Count;
            var i = b - segment.First;
            var (isMusic, after) = (!content[b].IsRest && content[b].RoadMap is null, b + 1);
            var isPlain = isMusic && !changes.Any(segment.Part, b) && content[b].Neck == song.Parts[segment.Part].Neck && content[b].Repeats == 0;
            places.Add(new Place(
                segment.Part, b, numbers[i], content[b].Strands.Sum(s => s.Events.Count),
                BarKeys.StandsAlone(content[b]) && (i == 0 || numbers[i - 1] != numbers[i]),
                after >= segment.End || (MayFollow(content[after]) && numbers[i + 1] != numbers[i])) { IsTaken = b < riffEnd || !isPlain });
        }
        return [.. places];
    }

    private static (ImmutableArray<(int Line, int Start)> Occurrences, int Length)? Best(List<Place[]> lines)
    {
        ImmutableArray<(int, int)> best = [];
        var (gain, bestLength) = (0, 0);
        for (var length = LongestRiff; length >= 1; length--)
        {
            foreach (var found in Occurrences(lines, length))
            {
                var (line, start) = found[0];
                var size = lines[line].AsSpan(start, length).ToArray().Sum(p => p.Events) + length;
                var won = (found.Count - 1) * size;
                if (length == 1 && found.Count < 3 || won < LeastGain || won <= gain) continue;
                (best, gain, bestLength) = ([.. found], won, length);
            }
        }
        return gain > 0 ? (best, bestLength) : null;
    }

    private static IEnumerable<List<(int Line, int Start)>> Occurrences(List<Place[]> lines, int length)
    {
        var found = new Dictionary<string, List<(int Line, int Start)>>(StringComparer.Ordinal);
        for (var line = 0; line < lines.Count; line++)
        {
            var places = lines[line];
            for (var start = 0; start + length <= places.Length; start++)
            {
                if (!places[start].MayStart || !places[start + length - 1].MayEnd) continue;
                var bars = places.AsSpan(start, length);
                var isFree = true;
                foreach (var bar in bars) isFree &= !bar.IsTaken;
                if (!isFree) continue;
                var key = string.Join(' ', bars.ToArray().Select(b => b.Key));
                if (!found.TryGetValue(key, out var starts)) found[key] = starts = [];
                if (starts.Count > 0 && starts[^1].Line == line && starts[^1].Start + length > start) continue;
                starts.Add((line, start));
            }
        }
        return found.Values.Where(s => s.Count > 1);
    }
}
