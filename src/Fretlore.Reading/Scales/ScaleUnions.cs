using Fretlore.Music;
using Fretlore.Music.Scales;

namespace Fretlore.Reading.Scales;

/// <summary>A five- or six-note scale with one or two tones of a mode around it: minor pentatonic with the sixth of Dorian.</summary>
/// <param name="Base">The scale a player's hand is in.</param>
/// <param name="Mode">The mode that the added tones come from.</param>
/// <param name="Added">The added tones, semitones above the root.</param>
/// <param name="Cost">Lower is better.</param>
internal readonly record struct ScaleUnion(Scale Base, Scale Mode, PitchClassSet Added, double Cost)
{
    // A tone added in passing is cheaper than a whole mode; one that sounds as much as the others is better told by the mode.
    private const double AddedTone = 0.35;
    private const double AddedShare = 3.5;
    private const int MostAdded = 2;

    private static readonly string[] Bases = ["Minor pentatonic", "Major pentatonic", "Blues"];
    private static readonly string[] Modes = ["Dorian", "Aeolian", "Phrygian", "Ionian", "Mixolydian", "Lydian"];

    private static readonly (Scale Base, Scale[] Modes)[] Pairs = [.. Bases.Select(b => (Named(b), Around(Named(b))))];

    /// <summary>The cheapest union on a root; false when the notes make none.</summary>
    internal static bool TryBest(NoteWeights weights, int root, bool rootIsGiven, out ScaleUnion best)
    {
        best = default;
        var played = weights.Set.From(root);
        foreach (var (scale, modes) in Pairs)
        {
            var added = played.Except(scale.Tones);
            if (added.Count is 0 or > MostAdded) continue;
            foreach (var mode in modes)
            {
                if (!added.IsWithin(mode.Tones)) continue;
                var cost = ScalePricing.PriceOfUnion(scale, added, root, weights, rootIsGiven);
                foreach (var tone in added) cost += AddedTone + AddedShare * weights.Share(NoteName.Wrap(tone + root, 12));
                if (best.Base is null || cost < best.Cost) best = new ScaleUnion(scale, mode, added, cost);
                break;
            }
        }
        return best.Base is not null;
    }

    internal Scale ToScale() => Base.With(Mode, Added);

    // Modes that hold the whole base; a blue note beside the fifth is nobody's.
    private static Scale[] Around(Scale scale) =>
        [.. Modes.Select(Named).Where(m => (scale.Name == "Blues" ? scale.Tones.Without(6) : scale.Tones).IsWithin(m.Tones))];

    private static Scale Named(string name) => ScaleTable.TryFind(name, out var scale) ? scale : throw new ArgumentException(name);
}
