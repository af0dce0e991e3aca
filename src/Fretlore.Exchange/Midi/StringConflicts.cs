using Fretlore.Performance;

namespace Fretlore.Exchange.Midi;

/// <summary>What it would cost two strings of a part to share a channel: notes of one that would be bent with the other's, keys that both would press.</summary>
internal sealed class StringConflicts
{
    // A chord out of tune is heard; a key that is struck for two strings at once is next to not.
    private const double Smeared = 100;
    private const double SameKey = 10;

    // Strings that sound together can be told apart less well by who reads the file.
    private const double Together = 0.01;

    private readonly Dictionary<(int, int), double> costs;

    private StringConflicts(Dictionary<(int, int), double> costs) => this.costs = costs;

    public double Cost(int first, int second) => costs.GetValueOrDefault((Math.Min(first, second), Math.Max(first, second)));

    public static StringConflicts Of(PerformedPart part)
    {
        var costs = new Dictionary<(int, int), double>();
        var sounding = new List<PerformedNote>();
        foreach (var note in part.Notes.OrderBy(n => n.Onset))
        {
            sounding.RemoveAll(s => s.Release <= note.Onset);
            foreach (var other in sounding)
            {
                if (other.String == note.String) continue;
                var (first, second) = (Math.Min(note.String.Value, other.String.Value), Math.Max(note.String.Value, other.String.Value));
                var cost = Together + (note.Pitch.IsFlat && other.Pitch.IsFlat ? 0 : Smeared) + (note.Height == other.Height ? SameKey : 0);
                costs[(first, second)] = costs.GetValueOrDefault((first, second)) + cost;
            }
            sounding.Add(note);
        }
        return new StringConflicts(costs);
    }
}
