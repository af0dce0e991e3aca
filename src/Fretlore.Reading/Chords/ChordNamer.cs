using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Reading.Chords;

/// <summary>Names any set of sounding notes as chords, best name first.</summary>
/// <remarks>
/// Every sounding pitch class is tried as the root of every family of <see cref="ChordFamilies"/>; what is over becomes tensions, what
/// lacks is omitted, and <see cref="ChordPricing"/> says what that costs. The order and the octaves of the notes don't matter, only which is lowest.
/// </remarks>
public static class ChordNamer
{
    /// <summary>How many candidates are returned at most.</summary>
    public const int MostCandidates = 6;

    // A name this much dearer than the best is noise, unless there are fewer than three.
    private const double FarBehind = 3.0;

    // A chord without its root needs its third, its seventh and more to be recognised.
    private const int RootlessNotes = 4;

    /// <param name="heights">What sounds, in any order, doubled notes included.</param>
    /// <param name="context">What is known around the chord.</param>
    public static ChordNaming Name(ReadOnlySpan<Height> heights, ChordContext context = default)
    {
        if (heights.IsEmpty) return new ChordNaming(ChordContent.Silence, []);
        var lowest = heights[0];
        foreach (var height in heights)
        {
            if (height < lowest) lowest = height;
        }
        var all = PitchClassSet.Of(heights);
        var upper = default(PitchClassSet);
        foreach (var height in heights)
        {
            if (height != lowest) upper = upper.With(height.PitchClass);
        }
        return Name(all, lowest.PitchClass, upper.Contains(lowest.PitchClass), context);
    }

    /// <summary>Names pitch classes over a bass.</summary>
    /// <param name="all">All pitch classes, the bass included.</param>
    /// <param name="bass">Pitch class of the lowest note.</param>
    /// <param name="bassIsDoubled">True when the bass note's pitch class also sounds higher up.</param>
    /// <param name="context">What is known around the chord.</param>
    public static ChordNaming Name(PitchClassSet all, int bass, bool bassIsDoubled, ChordContext context = default)
    {
        all = all.With(bass);
        if (all.Count == 1)
        {
            var note = RootSpelling.Of(bass, null, context.Key);
            return new ChordNaming(ChordContent.OneNote, [ChordWording.OneNote(note)]);
        }
        Span<ChordGuess> guesses = new ChordGuess[12];
        var count = 0;
        for (var root = 0; root < 12; root++)
        {
            if (!all.Contains(root) && all.Count < RootlessNotes) continue;
            if (TryBest(all, root, bass, bassIsDoubled, context, out var guess)) guesses[count++] = guess;
        }
        guesses = guesses[..count];
        // Equal costs go by the root's distance above the bass, so that the order moves along when everything is transposed.
        guesses.Sort((a, b) => Math.Abs(a.Cost - b.Cost) > 1e-9
            ? a.Cost.CompareTo(b.Cost)
            : NoteName.Wrap(a.Root - bass, 12).CompareTo(NoteName.Wrap(b.Root - bass, 12)));
        var readings = ImmutableArray.CreateBuilder<ChordReading>(Math.Min(count + 1, MostCandidates));
        if ((count == 0 || StackNamer.IsDearer(guesses[0].Cost)) && StackNamer.Name(all, bass, context.Key) is { } stacked) readings.Add(stacked);
        foreach (var guess in guesses)
        {
            if (readings.Count == MostCandidates || readings.Count >= 3 && guess.Cost > guesses[0].Cost + FarBehind) break;
            readings.Add(ChordWording.Read(guess, bass, context));
        }
        return new ChordNaming(all.Count == 2 ? ChordContent.TwoNotes : ChordContent.Chord, readings.ToImmutable());
    }

    // The cheapest family on one root, with the bass in the chord or, when it sounds nowhere else, below a complete chord it is no part of.
    private static bool TryBest(PitchClassSet all, int root, int bass, bool bassIsDoubled, ChordContext context, out ChordGuess best)
    {
        best = default;
        var cost = double.MaxValue;
        var tones = all.From(root);
        var bassDegree = NoteName.Wrap(bass - root, 12);
        var above = bassDegree == 0 || bassIsDoubled ? tones : tones.Without(bassDegree);
        var rootInKey = context.Key is not { } key || KeyNotes.Of(key).Contains(root);
        var rootless = !tones.Contains(0);
        if (rootless) tones = tones.With(0);
        foreach (var family in ChordFamilies.All)
        {
            if (!family.Core.IsWithin(tones)) continue;
            if (rootless)
            {
                if (family.Third < 0 || family.Seventh < 0 || !tones.Contains(family.Third)) continue;
                var heard = new ChordKind(family, tones.Except(family.Tones), family.Tones.Except(tones).With(0));
                var dear = ChordPricing.Price(heard, bassDegree, false, rootInKey, null);
                if (dear >= cost) continue;
                cost = dear;
                best = new ChordGuess(root, heard, false, rootInKey, dear);
                continue;
            }
            var kind = new ChordKind(family, tones.Except(family.Tones), family.Tones.Except(tones));
            var price = ChordPricing.Price(kind, bassDegree, false, rootInKey, null);
            if (price < cost)
            {
                cost = price;
                best = new ChordGuess(root, kind, false, rootInKey, price);
            }
            if (above == tones || above != family.Tones) continue;
            kind = new ChordKind(family);
            price = ChordPricing.Price(kind, bassDegree, true, rootInKey, null);
            if (price >= cost) continue;
            cost = price;
            best = new ChordGuess(root, kind, true, rootInKey, price);
        }
        return cost < double.MaxValue;
    }
}
