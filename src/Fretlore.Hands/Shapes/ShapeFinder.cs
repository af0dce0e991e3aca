using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Score;

namespace Fretlore.Hands.Shapes;

/// <summary>Finds every shape on a neck that plays a chord and that a hand can hold.</summary>
/// <remarks>
/// Every string is left out, open, or stopped within six frets; each shape whose notes are the chord's, with all that must sound, is given to the
/// hand. A shape without its root is taken only for chords of four tones and more. Where a neck has more than eight strings, six of them sound at most.
/// </remarks>
public sealed class ShapeFinder
{
    private const int WindowFrets = 6;
    private const int MuteFret = -1;

    private readonly Neck neck;
    private readonly ChordSymbol symbol;
    private readonly int? from;
    private readonly GripRules rules;
    private readonly GripFinder finder;
    private readonly PitchClassSet tones;
    private readonly int bass;
    private readonly bool mustBeInBass;

    private ShapeFinder(ChordSymbol symbol, Neck neck, HandSize size, int? from)
    {
        (this.symbol, this.neck, this.from) = (symbol, neck, from);
        rules = new GripRules(NeckGeometry.Of(neck), size);
        finder = new GripFinder(rules);
        var root = symbol.Name.Root.PitchClass;
        bass = symbol.Name.Bass.PitchClass;
        mustBeInBass = symbol.Name.Bass != symbol.Name.Root;
        tones = symbol.Tones.Up(root);
    }

    /// <summary>All shapes, best first.</summary>
    /// <param name="symbol">The chord.</param>
    /// <param name="neck">Frets are written under its capo.</param>
    /// <param name="size">The hand.</param>
    /// <param name="from">The position the hand comes from, or null.</param>
    public static ImmutableArray<ShapeChoice> Find(ChordSymbol symbol, Neck neck, HandSize size = HandSize.Average, int? from = null)
    {
        var search = new ShapeFinder(symbol, neck, size, from);
        var found = new List<ShapeChoice>();
        var frets = new int[neck.StringCount];
        // Shapes by their lowest stopped fret, so that none is found twice; at 0 all strings are open.
        for (var lowest = 0; lowest <= neck.HighestFret.Number; lowest++) search.Fill(frets, 0, lowest, found);
        return
        [
            .. found.OrderBy(choice => choice.Cost).ThenBy(choice => choice.Position)
                .ThenBy(choice => choice.Shape.ToString(), StringComparer.Ordinal),
        ];
    }

    // Strings from the low one up; frets by the same index.
    private void Fill(int[] frets, int at, int lowest, List<ShapeChoice> found)
    {
        if (at == frets.Length)
        {
            if (Judge(frets, lowest) is { } choice) found.Add(choice);
            return;
        }
        frets[at] = MuteFret;
        Fill(frets, at + 1, lowest, found);
        if (neck.StringCount > 8 && Sounding(frets.AsSpan(0, at)) >= ShapeCosts.MostSounding) return;
        if (Mutes(frets.AsSpan(0, at)) > ShapeCosts.MostInnerMutes) return;
        TryFret(frets, at, 0, lowest, found);
        if (lowest == 0) return;
        for (var fret = lowest; fret < lowest + WindowFrets && fret <= neck.HighestFret.Number; fret++) TryFret(frets, at, fret, lowest, found);
    }

    private void TryFret(int[] frets, int at, int fret, int lowest, List<ShapeChoice> found)
    {
        var number = new StringNumber(frets.Length - at);
        if (neck.Capo.IsBehind(number, new Fret(fret))) return;
        var sounds = neck.Sounding(number, new Fret(fret)).PitchClass;
        if (!tones.Contains(sounds) && !(mustBeInBass && sounds == bass)) return;
        frets[at] = fret;
        Fill(frets, at + 1, lowest, found);
    }

    private static int Sounding(ReadOnlySpan<int> frets)
    {
        var count = 0;
        foreach (var fret in frets) count += fret == MuteFret ? 0 : 1;
        return count;
    }

    // Strings silent after one that sounds.
    private static int Mutes(ReadOnlySpan<int> frets)
    {
        var count = 0;
        var any = false;
        foreach (var fret in frets)
        {
            any |= fret != MuteFret;
            if (any && fret == MuteFret) count++;
        }
        return count;
    }

    private ShapeChoice? Judge(int[] frets, int lowest)
    {
        var pitchClasses = default(PitchClassSet);
        Height? low = null;
        var hasLowest = lowest == 0;
        var (first, last, silent) = (-1, -1, 0);
        for (var i = 0; i < frets.Length; i++)
        {
            if (frets[i] == MuteFret) continue;
            if (first < 0) first = i;
            else silent += i - last - 1;
            last = i;
            hasLowest |= frets[i] == lowest;
            var height = Height(frets, i);
            pitchClasses = pitchClasses.With(height.PitchClass);
            if (low is null || height < low) low = height;
        }
        if (!hasLowest || low is null || silent > ShapeCosts.MostInnerMutes) return null;
        if (mustBeInBass && low.Value.PitchClass != bass) return null;
        if (Lack(pitchClasses) is not { } lack) return null;
        var hold = HoldOf(frets);
        if (Easiest(hold) is not { } held) return null;
        var amount = lack.Cost + Spread(frets, lowest) + (low.Value.PitchClass == bass ? 0 : ShapeCosts.OtherBass) + silent * ShapeCosts.InnerStringMuted
            + (first + frets.Length - 1 - last) * ShapeCosts.OuterStringLeft;
        return new ShapeChoice(
            new Shape(frets.Select(f => f == MuteFret ? (Fret?)null : new Fret(f)).ToValueList()), Fingers(held.Grip, frets.Length),
            held.Grip?.Position ?? 1, lack.Missing, Spelled(low.Value.PitchClass), held.Cost, amount);
    }

    // How unevenly it sounds: open strings far below the fingers, unisons, and the height on the neck where no position is asked for.
    private double Spread(int[] frets, int lowest)
    {
        var cost = from is null ? ShapeCosts.UpTheNeck * Math.Max(0, lowest - 1) : 0;
        var isBass = true;
        for (var i = 0; i < frets.Length; i++)
        {
            if (frets[i] == MuteFret) continue;
            if (frets[i] == 0 && !isBass) cost += ShapeCosts.FarFromOpen * Math.Max(0, lowest - OpenAt(frets.Length - i) - ShapeCosts.NearOpen);
            isBass = false;
            for (var j = 0; j < i; j++)
            {
                if (frets[j] != MuteFret && Height(frets, i) == Height(frets, j)) cost += ShapeCosts.Unison;
            }
        }
        return cost;
    }

    // Where an open string is, counted as frets are.
    private int OpenAt(int number) => neck.Capo.FromNut(new StringNumber(number), Fret.Open) - neck.Capo.CountedFrom;

    private Height Height(int[] frets, int i) => neck.Sounding(new StringNumber(frets.Length - i), new Fret(frets[i]));

    // What of the chord does not sound; null when it would not be that chord.
    private (ImmutableArray<Interval> Missing, double Cost)? Lack(PitchClassSet sounding)
    {
        var there = sounding.From(symbol.Name.Root.PitchClass);
        var missing = ImmutableArray.CreateBuilder<Interval>();
        var cost = 0.0;
        foreach (var tone in symbol.Tones.Except(there))
        {
            if (tone == 0 ? symbol.Needed.Count < ShapeCosts.RootlessTones : symbol.Needed.Contains(tone)) return null;
            missing.Add(symbol.Name.Kind.DegreeOf(tone));
            cost += tone == 0 ? ShapeCosts.RootMissing : tone == symbol.Name.Kind.Family.Fifth ? ShapeCosts.FifthMissing : ShapeCosts.TensionMissing;
        }
        return (missing.ToImmutable(), cost);
    }

    private Hold HoldOf(int[] frets)
    {
        var presses = new List<Press>();
        var open = 0;
        for (var i = 0; i < frets.Length; i++)
        {
            if (frets[i] == 0) open |= 1 << frets.Length - i;
            else if (frets[i] > 0) presses.Add(new Press(frets.Length - i, frets[i]));
        }
        return new Hold([.. presses], open) { Capo = neck.Capo };
    }

    private (Grip? Grip, double Cost)? Easiest(Hold hold)
    {
        if (hold.Presses.Length == 0) return (null, 0);
        (Grip? Grip, double Cost)? best = null;
        foreach (var grip in finder.Find(hold))
        {
            var cost = grip.Cost + Way(grip.Position);
            if (best is null || cost < best.Value.Cost) best = (grip, cost);
        }
        return best;
    }

    private double Way(int position) => from is not { } start || start == position
        ? 0
        : HandCosts.Shift + HandCosts.ShiftPerMillimetre * Math.Abs(rules.Place(position) - rules.Place(start));

    private static ImmutableArray<Finger?> Fingers(Grip? grip, int strings)
    {
        var fingers = new Finger?[strings];
        for (var i = 0; i < (grip?.Fingers.Length ?? 0); i++) fingers[strings - grip!.Hold.Presses[i].String] = grip.Fingers[i];
        return [.. fingers];
    }

    private NoteName Spelled(int pitchClass)
    {
        if (pitchClass == bass) return symbol.Name.Bass;
        var above = NoteName.Wrap(pitchClass - symbol.Name.Root.PitchClass, 12);
        return symbol.Name.Root.Transpose(symbol.Name.Kind.DegreeOf(above));
    }
}
