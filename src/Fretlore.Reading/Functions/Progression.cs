using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Functions;

/// <summary>Puts functions on a part's chords and finds the cadences at the ends of its sections.</summary>
internal static class Progression
{
    // A chord that began earlier than this before a section's end was reached too long ago to close it.
    private const int ClosingBars = 2;

    internal static ImmutableArray<ChordMoment> WithFunctions(ImmutableArray<ChordMoment> chords, ImmutableArray<Key> keys)
    {
        // A song goes through the same few changes over and over.
        var known = new Dictionary<(ChordName?, ChordName?, Key, Key), ChordFunction?>();
        var told = ImmutableArray.CreateBuilder<ChordMoment>(chords.Length);
        for (var i = 0; i < chords.Length; i++)
        {
            var next = i + 1 < chords.Length ? chords[i + 1] : null;
            var (name, nextName, key) = (chords[i].Best.Name, next?.Best.Name, keys[chords[i].Bar]);
            var nextKey = next is null ? key : keys[next.Bar];
            if (!known.TryGetValue((name, nextName, key, nextKey), out var function))
            {
                function = FunctionFinder.Of(name, nextName, key, nextKey);
                known.Add((name, nextName, key, nextKey), function);
            }
            told.Add(chords[i] with { Function = function });
        }
        return told.MoveToImmutable();
    }

    internal static ImmutableArray<Cadence> Cadences(ImmutableArray<ChordMoment> chords, ImmutableArray<Key> keys, ValueList<Section> sections)
    {
        var found = ImmutableArray.CreateBuilder<Cadence>();
        var next = 0;
        foreach (var section in sections)
        {
            var end = section.FirstBar + section.BarCount;
            ChordMoment? first = null, last = null;
            for (; next < chords.Length && chords[next].Bar < end; next++)
            {
                if (chords[next].Bar < section.FirstBar) continue;
                if (last is not null && last.Best.Root == chords[next].Best.Root) continue;
                (first, last) = (last, chords[next]);
            }
            if (first is null || last is null || last.Bar < end - ClosingBars || keys[first.Bar] != keys[last.Bar]) continue;
            if (Close(first, last, keys[last.Bar]) is { } cadence) found.Add(cadence);
        }
        return found.ToImmutable();
    }

    private static Cadence? Close(ChordMoment first, ChordMoment last, Key key)
    {
        if (first.Best.Name is not { } from || last.Best.Name is not { } to) return null;
        var (start, end) = (Above(from, key), Above(to, key));
        var leads = start == 7 && from.Kind.Family.Third != 3 || start == 11;
        CadenceKind? kind = (start, end) switch
        {
            (7 or 11, 0) => CadenceKind.Authentic,
            (5, 0) => CadenceKind.Plagal,
            (10, 0) => CadenceKind.Subtonic,
            (1, 0) => CadenceKind.Phrygian,
            (_, 7) when to.Kind.Family.Third != 3 => CadenceKind.Half,
            (7 or 11, 8 or 9) when leads => CadenceKind.Deceptive,
            _ => null,
        };
        if (kind is not { } close) return null;
        var words = close switch
        {
            CadenceKind.Authentic => "an authentic cadence: from the dominant home",
            CadenceKind.Plagal => "a plagal cadence: from the fourth chord home",
            CadenceKind.Subtonic => "a subtonic cadence: home from a whole step below",
            CadenceKind.Phrygian => "a phrygian cadence: home from a half step above",
            CadenceKind.Deceptive => "a deceptive cadence: the dominant does not go home",
            _ => "a half cadence: it stops on the dominant and wants to go on",
        };
        return new Cadence(last.Bar, close, $"{RomanNumeral.Of(from, key.Tonic)} to {RomanNumeral.Of(to, key.Tonic)}, {words}");
    }

    private static int Above(ChordName chord, Key key) => NoteName.Wrap(chord.Root.PitchClass - key.Tonic.PitchClass, 12);
}
