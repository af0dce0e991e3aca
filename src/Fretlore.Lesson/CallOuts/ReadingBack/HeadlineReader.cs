using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>What a headline says, understood from its words alone.</summary>
/// <param name="Features">What it says of the notes.</param>
/// <param name="IsNothing">True when it says that there is nothing to play.</param>
/// <param name="Relation">The sentence about another riff; null when there is none.</param>
/// <param name="Positions">The sentence about where the hand is; null when there is none.</param>
/// <param name="HardPlace">The sentence about what to mind; null when there is none.</param>
/// <param name="Problem">The first sentence that was not understood; null when all were.</param>
internal sealed record ReadHeadline(RiffFeatures Features, bool IsNothing, string? Relation, HandPositions? Positions, string? HardPlace, string? Problem);

/// <summary>Turns a headline back into what it says about notes. It knows the neck, and nothing of the riff.</summary>
/// <remarks>A word that it does not understand is a problem, never skipped.</remarks>
internal sealed class HeadlineReader
{
    private readonly StringWords strings;
    private RiffFeatures features = new() { Bars = 0 };
    private bool isNothing;
    private string? relation;
    private HandPositions? positions;
    private string? hardPlace;

    private HeadlineReader(StringWords strings) => this.strings = strings;

    public static ReadHeadline Read(Speech headline, StringWords strings)
    {
        var reader = new HeadlineReader(strings);
        string? problem = null;
        foreach (var sentence in headline.Breaths)
        {
            var row = new WordRow(sentence);
            if ((!reader.TrySentence(row, sentence) || !row.IsAtEnd) && problem is null) problem = $"not understood: '{row.Rest}' in '{sentence}'";
        }
        return new ReadHeadline(reader.features, reader.isNothing, reader.relation, reader.positions, reader.hardPlace, problem);
    }

    private bool TrySentence(WordRow row, string sentence)
    {
        if (row.Current is "same" or "variation") return TryWhole(row, sentence, ref relation);
        if (row.Current == "mind") return TryWhole(row, sentence, ref hardPlace);
        if (row.Current == "hand") return positions is null && HandPositions.TryRead(row, out positions);
        if (row.Take("nothing to play : rest for")) return features.Playing == Playing.Nothing && (isNothing = TryLength(row));
        if (row.Take("listen for")) return TryDevices(row);
        return TryLength(row) || TryPlaying(row);
    }

    // Sentences that others hold against the music.
    private static bool TryWhole(WordRow row, string sentence, ref string? kept)
    {
        if (kept is not null) return false;
        kept = sentence;
        row.Place = row.Words.Count;
        return true;
    }

    private bool TryPlaying(WordRow row)
    {
        if (features.Playing != Playing.Nothing) return false;
        // The longest words first: one kind's may begin with another's.
        foreach (var (playing, words) in HeadlineWords.AllPlaying.OrderByDescending(p => p.Words.Length))
        {
            if (!row.Take(new WordRow(words).Rest)) continue;
            features = features with { Playing = playing };
            var isRead = playing switch
            {
                Playing.OneFinger => TryStrings(row, false),
                Playing.Shapes => TryShapes(row),
                Playing.SeveralStrings => true,
                _ => row.Take("on") ? TryStrings(row, false) : row.Take("from") && TryStrings(row, true),
            };
            return isRead && TryReach(row);
        }
        return false;
    }

    private bool TryStrings(WordRow row, bool isSpan)
    {
        var at = row.Place;
        if (!strings.TryRead(row.Words, ref at, out var low)) return false;
        row.Place = at;
        features = features with { Strings = low, IsSpan = isSpan };
        if (!isSpan) return true;
        if (low.Count != 1 || !row.Take("to")) return false;
        at = row.Place;
        if (!strings.TryRead(row.Words, ref at, out var high) || high.Count != 1) return false;
        row.Place = at;
        features = features with { Strings = [low[0], high[0]] };
        return true;
    }

    // All words up to the frets.
    private bool TryShapes(WordRow row)
    {
        var end = row.Words.Count;
        for (var i = row.Place; i + 1 < row.Words.Count; i++)
        {
            if (row.Words[i] == "," && row.Words[i + 1] is "fret" or "frets" or "all") end = i;
        }
        features = features with { Shapes = string.Join(' ', row.Words.Take(end).Skip(row.Place).Where(w => w != ",")) };
        row.Place = end;
        return features.Shapes.Length > 0;
    }

    private bool TryReach(WordRow row)
    {
        row.SkipPauses();
        if (row.IsAtEnd) return true;
        var (low, high) = (0, 0);
        if (row.Take("all open"))
        {
            features = features with { Reach = new Reach(0, 0, features.Strings.Count == 1 ? 1 : 2) };
            return true;
        }
        if (row.Take("one string open"))
        {
            features = features with { Reach = new Reach(0, 0, 1) };
            return true;
        }
        if (row.Take("frets"))
        {
            if (!row.TakeNumber(out low) || !row.Take("to") || !row.TakeNumber(out high) || low >= high) return false;
        }
        else if (row.Take("fret"))
        {
            if (!row.TakeNumber(out low)) return false;
            high = low;
        }
        else
        {
            return false;
        }
        features = features with { Reach = new Reach(low, high, row.Take("open strings") ? 2 : row.Take("open string") ? 1 : 0) };
        return true;
    }

    private bool TryDevices(WordRow row)
    {
        if (features.Devices.Count > 0) return false;
        var found = new List<Device>();
        for (row.SkipPauses(); !row.IsAtEnd; row.SkipPauses())
        {
            var before = row.Place;
            foreach (var (device, words) in HeadlineWords.AllDevices.OrderByDescending(d => d.Words.Length))
            {
                if (!row.Take(new WordRow(words).Rest)) continue;
                found.Add(device);
                break;
            }
            if (row.Place == before) return false;
        }
        features = features with { Devices = found.ToValueList() };
        return found.Count > 0;
    }

    // "two bars of three four, four with the repeats, mostly eighths"
    private bool TryLength(WordRow row)
    {
        var start = row.Place;
        var pickup = row.Take("pickup");
        var bars = 0;
        if (row.TakeNumber(out var count))
        {
            if (!row.Take("bars") && !row.Take("bar"))
            {
                row.Place = start;
                return false;
            }
            bars = count;
        }
        else if (!pickup)
        {
            return false;
        }
        if (features.Bars > 0 || features.HasPickup) return false;
        (int, int)? meter = (4, 4);
        if (row.Take("in changing metres")) meter = null;
        else if (row.Take("of"))
        {
            if (!row.TakeNumber(out var upper) || !row.TakeNumber(out var lower)) return false;
            meter = (upper, lower);
        }
        features = features with { Bars = bars, HasPickup = pickup, BarsPlayed = bars, Meter = meter };
        row.SkipPauses();
        if (row.TakeNumber(out var played))
        {
            if (!row.Take("with repeats")) return false;
            features = features with { BarsPlayed = played };
            row.SkipPauses();
        }
        var isAll = row.Take("all");
        if (!isAll && !row.Take("mostly")) return true;
        var at = row.Place;
        if (!ValueWords.TryRead(row.Words, ref at, out var value)) return false;
        row.Place = at;
        features = features with { MainValue = new MainValue(value.Value, value.Tuplet, isAll) };
        return true;
    }
}
