using System.Collections.Immutable;

namespace Fretlore.Music.Scales;

/// <summary>The scales that are known by name.</summary>
/// <remarks>
/// Formulas agree with Forte's pitch-class sets; the modes of the harmonic minor are marked HM, those of the ascending melodic
/// minor MM, each with its degree (common practice). "Hirajoshi" has three published meanings: the one of Kostka and Payne (and Speed),
/// 1 2 b3 5 b6, answers to the bare name, and those of Sachs (and Slonimsky) and of Burrows carry their authors' names. Burrows'
/// has the notes of Iwato. Pelog is an equal-tempered approximation.
/// </remarks>
public static class ScaleTable
{
    public static ImmutableArray<Scale> All { get; } =
    [
        new("Ionian", "1 2 3 4 5 6 7", 0.1, "Major", "Ionian (major)"),
        new("Dorian", "1 2 b3 4 5 6 b7", 0.3),
        new("Phrygian", "1 b2 b3 4 5 b6 b7", 0.4),
        new("Lydian", "1 2 3 #4 5 6 7", 0.4),
        new("Mixolydian", "1 2 3 4 5 6 b7", 0.3),
        new("Aeolian", "1 2 b3 4 5 b6 b7", 0.1, "Natural minor", "Minor", "Aeolian (natural minor)"),
        new("Locrian", "1 b2 b3 4 b5 b6 b7", 0.9),
        new("Harmonic minor", "1 2 b3 4 5 b6 7", 0.4),
        new("Locrian natural 6", "1 b2 b3 4 b5 6 b7", 1.4, "HM2", "Locrian nat.6 (HM2)"),
        new("Ionian #5", "1 2 3 4 #5 6 7", 1.4, "HM3", "Ionian augmented", "Ionian #5 (HM3)"),
        new("Dorian #4", "1 2 b3 #4 5 6 b7", 1, "Ukrainian", "HM4", "Ukrainian Dorian", "Dorian #4 / Ukrainian (HM4)"),
        new("Phrygian dominant", "1 b2 3 4 5 b6 b7", 0.6, "HM5", "Phrygian dominant (HM5)"),
        new("Lydian #2", "1 #2 3 #4 5 6 7", 1.4, "HM6", "Lydian #2 (HM6)"),
        new("Ultralocrian", "1 b2 b3 b4 b5 b6 bb7", 1.4, "HM7", "Ultralocrian (HM7)"),
        new("Melodic minor", "1 2 b3 4 5 6 7", 0.7, "Melodic minor ascending", "MM1", "Melodic minor (asc.)"),
        new("Dorian b2", "1 b2 b3 4 5 6 b7", 1.2, "MM2", "Dorian b2 (MM2)"),
        new("Lydian augmented", "1 2 3 #4 #5 6 7", 1.4, "MM3", "Lydian augmented (MM3)"),
        new("Lydian dominant", "1 2 3 #4 5 6 b7", 0.9, "MM4", "Lydian dominant (MM4)"),
        new("Mixolydian b6", "1 2 3 4 5 b6 b7", 1, "MM5", "Mixolydian b6 (MM5)"),
        new("Locrian #2", "1 2 b3 4 b5 b6 b7", 1.4, "MM6", "Locrian #2 (MM6)"),
        new("Altered", "1 b2 b3 b4 b5 b6 b7", 1, "MM7", "Super Locrian", "Altered (MM7)"),
        new("Harmonic major", "1 2 3 4 5 b6 7", 1.1),
        new("Major pentatonic", "1 2 3 5 6", 0.1),
        new("Minor pentatonic", "1 b3 4 5 b7", 0),
        new("Blues", "1 b3 4 b5 5 b7", 0.2, "Minor blues", "Blues (minor)"),
        new("Major blues", "1 2 b3 3 5 6", 0.4, "Blues major", "Blues (major)"),
        new("Bebop dominant", "1 2 3 4 5 6 b7 7", 1.3),
        new("Bebop major", "1 2 3 4 5 #5 6 7", 1.3),
        new("Bebop dorian", "1 2 b3 3 4 5 6 b7", 1.3),
        new("Bebop melodic minor", "1 2 b3 4 5 b6 6 7", 1.3),
        new("Diminished whole-half", "1 2 b3 4 b5 b6 6 7", 1, "Whole-half diminished"),
        new("Diminished half-whole", "1 b2 b3 3 #4 5 6 b7", 1, "Half-whole diminished"),
        new("Whole tone", "1 2 3 #4 #5 b7", 0.9),
        new("Augmented", "1 b3 3 5 #5 7", 1.6, "Hexatonic augmented", "Augmented (hexatonic)"),
        new("Double harmonic", "1 b2 3 4 5 b6 7", 1, "Byzantine", "Double harmonic major", "Double harmonic (Byzantine)"),
        new("Hungarian minor", "1 2 b3 #4 5 b6 7", 1),
        new("Hungarian major", "1 #2 3 #4 5 6 b7", 1.4),
        new("Neapolitan minor", "1 b2 b3 4 5 b6 7", 1.4),
        new("Neapolitan major", "1 b2 b3 4 5 6 7", 1.4),
        new("Persian", "1 b2 3 4 b5 b6 7", 1.4),
        new("Enigmatic", "1 b2 3 #4 #5 #6 7", 1.4),
        new("Prometheus", "1 2 3 #4 6 b7", 1.6),
        new("Hirajoshi (Kostka-Payne)", "1 2 b3 5 b6", 1.6, "Hirajoshi", "Hirajoshi (Speed)", "Hirajoshi (Kostka-Payne/Speed)"),
        new("Hirajoshi (Sachs)", "1 3 #4 5 7", 1.6, "Hirajoshi (Slonimsky)", "Hirajoshi (Sachs/Slonimsky)"),
        new("Hirajoshi (Burrows)", "1 b2 4 b5 b7", 1.6),
        new("In-sen", "1 b2 4 5 b7", 1.6),
        new("In", "1 b2 4 5 b6", 1.6, "Miyako-bushi", "In / Miyako-bushi"),
        new("Iwato", "1 b2 4 b5 b7", 1.6),
        new("Kumoi", "1 2 b3 5 6", 1.6),
        new("Yo", "1 2 4 5 6", 1.6, "Ritusen", "Yo / Ritusen"),
        new("Egyptian", "1 2 4 5 b7", 1.2, "Suspended pentatonic", "Egyptian / suspended pent."),
        new("Pelog", "1 b2 b3 5 b6", 1.6, "Pelog (equal-tempered)", "Pelog (ET approx.)"),
        new("Spanish eight-tone", "1 b2 b3 3 4 b5 b6 b7", 1.6, "Spanish 8-tone"),
        new("Chromatic", "1 b2 2 b3 3 4 b5 5 b6 6 b7 7", 3),
    ];

    /// <summary>Finds a scale by one of its names; letter case, blanks, hyphens, brackets and the word "scale" don't matter.</summary>
    public static bool TryFind(string name, out Scale scale)
    {
        var wanted = Plain(name);
        foreach (var candidate in All)
        {
            if (Plain(candidate.Name) != wanted && !candidate.OtherNames.Items.Any(other => Plain(other) == wanted)) continue;
            scale = candidate;
            return true;
        }
        scale = All[0];
        return false;
    }

    /// <summary>The names nearest to one that is not known, best first, by the number of letters that differ.</summary>
    /// <param name="name">What was written.</param>
    /// <param name="count">How many at most.</param>
    public static ImmutableArray<string> Nearest(string name, int count = 3)
    {
        var wanted = Plain(name);
        return
        [
            .. All.Select(scale => (scale.Name, scale.Rarity, Distance: scale.OtherNames.Items.Append(scale.Name).Min(n => Difference(wanted, Plain(n)))))
                .OrderBy(c => c.Distance).ThenBy(c => c.Rarity).Take(count).Select(c => c.Name),
        ];
    }

    private static string Plain(string name)
    {
        var kept = new string([.. name.Where(c => char.IsLetterOrDigit(c) || c == '#').Select(char.ToLowerInvariant)]);
        return kept.Length > 5 && kept.EndsWith("scale", StringComparison.Ordinal) ? kept[..^5] : kept;
    }

    // Letters to insert, delete or replace (Levenshtein's distance); long input is cut, for nothing that long is a near miss.
    private static int Difference(string a, string b)
    {
        if (a.Length > 60) a = a[..60];
        Span<int> row = stackalloc int[b.Length + 1];
        for (var j = 0; j < row.Length; j++) row[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = corner + (a[i - 1] == b[j - 1] ? 0 : 1);
                corner = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.Length];
    }
}
