using System.Collections.Immutable;
using System.Text;
using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Reading.Chords;

/// <summary>Turns a guess into a reading: spelled notes, the symbol, the cost's parts and the reason made from them.</summary>
internal static class ChordWording
{
    internal static ChordReading OneNote(NoteName note) => new(
        $"{note} (one note)", note, "note", note, [note], $"Only {note} sounds, so this is a note and not yet a chord.", 0);

    /// <summary>A symbol the writer put where nothing sounds.</summary>
    internal static ChordReading Stated(string symbol, Key key)
    {
        var letters = 0;
        for (var i = 1; i <= Math.Min(3, symbol.Length); i++)
        {
            if (NoteName.TryParse(symbol.AsSpan(0, i), out _)) letters = i;
        }
        var root = letters > 0 && NoteName.TryParse(symbol.AsSpan(0, letters), out var name) ? name : key.Tonic;
        return new ChordReading(symbol, root, symbol[letters..], root, [root], $"The sheet says {symbol}; nothing sounds here to compare it with.", 0);
    }

    internal static ChordReading Read(ChordGuess guess, int bass, ChordContext context)
    {
        var kind = guess.Kind;
        var root = RootSpelling.Of(guess.Root, kind.Family, context.Key);
        var notes = ImmutableArray.CreateBuilder<NoteName>();
        foreach (var degree in kind.Degrees) notes.Add(root.Transpose(degree));
        var bassName = root;
        var bassDegree = NoteName.Wrap(bass - guess.Root, 12);
        if (bassDegree != 0) bassName = guess.ForeignBass ? RootSpelling.Of(bass, null, context.Key) : root.Transpose(kind.DegreeOf(bassDegree));
        if (guess.ForeignBass) notes.Add(bassName);
        var parts = ImmutableArray.CreateBuilder<CostPart>();
        ChordPricing.Price(kind, bassDegree, guess.ForeignBass, guess.RootInKey, parts);
        var name = new ChordName(root, kind, bassName);
        return new ChordReading(
            name.Symbol(), root, kind.Symbol(), bassName, notes.ToImmutable(), Reason(name, guess.ForeignBass, parts), Math.Round(guess.Cost, 4))
        {
            Name = name,
            Parts = parts.ToImmutable(),
        };
    }

    private static string Reason(ChordName name, bool foreignBass, ImmutableArray<CostPart>.Builder parts)
    {
        var kind = name.Kind;
        var root = Spoken.Name(name.Root);
        var text = new StringBuilder();
        if (name.Bass == name.Root) text.Append("Root ").Append(root).Append(" in the bass");
        else if (foreignBass) text.Append("Root ").Append(root).Append(" over ").Append(Spoken.Name(name.Bass)).Append(" in the bass, which is no part of the chord above,");
        else
        {
            var degree = Interval.Between(name.Root, name.Bass);
            text.Append("Root ").Append(root).Append(" with its ").Append(Degree.Words(kind.DegreeOf(degree.Semitones)))
                .Append(", ").Append(Spoken.Name(name.Bass)).Append(", in the bass");
        }
        AppendTones(text, name, foreignBass);
        foreach (var part in parts)
        {
            var clause = part.Why switch
            {
                CostReason.FifthMissing when kind.Family.Third > 0 => "the fifth is left out, which changes nothing",
                CostReason.FifthMissing => "the fifth is left out",
                CostReason.ThirdMissing => "no third sounds, so it is neither major nor minor",
                CostReason.RootMissing => root + " itself does not sound, so another part must give it",
                CostReason.RootOutsideKey => root + " is not a note of the key",
                _ => null,
            };
            if (clause is not null) text.Append("; ").Append(clause);
        }
        return text.Append('.').ToString();
    }

    // "with a minor third, a fifth and a flat seventh", then "; a ninth is added".
    private static void AppendTones(StringBuilder text, ChordName name, bool foreignBass)
    {
        var kind = name.Kind;
        var bass = name.Bass == name.Root || foreignBass ? -1 : Interval.Between(name.Root, name.Bass).Semitones;
        var words = new List<string>();
        foreach (var degree in kind.Degrees)
        {
            var semitones = NoteName.Wrap(degree.Semitones, 12);
            if (semitones == 0 || semitones == bass || kind.Tensions.Contains(semitones)) continue;
            var instead = kind.Family.Third < 0 && degree.Steps is 1 or 3 ? " in place of the third" : "";
            words.Add(Spoken.Article(Degree.Words(degree)) + instead);
        }
        if (words.Count > 0) text.Append(name.Bass == name.Root || foreignBass ? " with " : ", and ").Append(Spoken.Listed(words));
        else if (name.Bass != name.Root) text.Append(" and nothing else");
        if (ReferenceEquals(kind.Family, ChordFamilies.Power)) text.Append(": a power chord, neither major nor minor");
        var added = new List<string>();
        foreach (var tension in kind.Tensions)
        {
            if (tension != bass) added.Add(Spoken.Article(Degree.Words(kind.DegreeOf(tension))));
        }
        if (added.Count > 0) text.Append("; ").Append(Spoken.Listed(added)).Append(added.Count == 1 ? " is added" : " are added");
    }
}
