using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>How much each bar of a line stands out from the others: how high and how dense it is, how rare what the hands do in it, how far outside the key.</summary>
/// <remarks>Points from 0 to 4, one for each; weights by judgement.</remarks>
internal sealed class BarInterest(SongReading reading, IReadOnlyList<PartBar> line)
{
    private static readonly Func<Note, bool>[] Techniques =
    [
        n => n.Bend is not null, n => n.Attack == Attack.Tap, n => n.Harmonic is not null, n => n.Attack is Attack.Glide or Attack.PickedGlide,
        n => n.Attack is Attack.HammerOn or Attack.PullOff, n => n.Tremolo is not null, n => n.Vibrato.Width == VibratoWidth.Wide,
    ];

    public double[] Points()
    {
        var notes = line.Select(bar => bar.Notes.Where(n => !n.IsDead).ToArray()).ToArray();
        var sounding = notes.SelectMany(n => n).Select(n => n.Sounding.Midi).DefaultIfEmpty(0).ToArray();
        var (low, high) = (sounding.Min(), sounding.Max());
        var densest = Math.Max(1, notes.Max(n => n.Length));
        double[] commonness = [.. Techniques.Select(uses => notes.Count(bar => bar.Any(uses)) / (double)Math.Max(1, notes.Count(bar => bar.Length > 0)))];
        return [.. notes.Select(bar => bar.Length == 0 ? 0 : Height(bar, low, high) + bar.Length / (double)densest + Rarity(bar, commonness) + Outside(bar))];
    }

    private static double Height(Note[] bar, int low, int high) => high == low ? 0 : (bar.Max(n => n.Sounding.Midi) - low) / (double)(high - low);

    private static double Rarity(Note[] bar, double[] commonness) => Math.Min(1, Techniques.Select((uses, i) => bar.Any(uses) ? 1 - commonness[i] : 0).Sum());

    private double Outside(Note[] bar) => reading.Roles.IsDefaultOrEmpty ? 0
        : bar.Count(n => reading.Roles[n.Id.Index].Kind is RoleKind.Outside or RoleKind.ApproachNote) / (double)bar.Length;

    /// <summary>Bars whose points are well above the line's mean, and not below their neighbours'.</summary>
    public static IEnumerable<int> Peaks(double[] points)
    {
        var played = points.Where(p => p > 0).ToArray();
        if (played.Length < 4) yield break;
        var mean = played.Average();
        var deviation = Math.Sqrt(played.Average(p => (p - mean) * (p - mean)));
        for (var bar = 0; bar < points.Length; bar++)
        {
            var isTop = (bar == 0 || points[bar] > points[bar - 1]) && (bar + 1 == points.Length || points[bar] >= points[bar + 1]);
            if (isTop && deviation > 0.05 && points[bar] >= mean + deviation) yield return bar;
        }
    }
}
