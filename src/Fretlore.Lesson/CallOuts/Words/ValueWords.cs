using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Note values and tuplets as spoken: "a dotted quarter", "eighths", "triplets".</summary>
internal static class ValueWords
{
    private static readonly (ValueBase Value, string One, string Many)[] Names =
    [
        (ValueBase.Whole, "whole note", "whole notes"),
        (ValueBase.Half, "half note", "half notes"),
        (ValueBase.Quarter, "quarter", "quarters"),
        (ValueBase.Eighth, "eighth", "eighths"),
        (ValueBase.Sixteenth, "sixteenth", "sixteenths"),
        (ValueBase.ThirtySecond, "thirty-second", "thirty-seconds"),
        (ValueBase.SixtyFourth, "sixty-fourth", "sixty-fourths"),
    ];

    private static readonly (int Count, int InTimeOf, string Name)[] GroupNames = [(3, 2, "triplet"), (5, 4, "quintuplet"), (6, 4, "sextuplet"), (7, 4, "septuplet")];

    /// <summary>One of a value, with its article: "a dotted quarter", "an eighth", "an eighth of a triplet".</summary>
    public static string One(NoteValue value, Tuplet? tuplet)
    {
        var name = Dots(value) + Named(value.Base).One;
        return (name[0] == 'e' ? "an " : "a ") + name + (GroupName(value, tuplet) is { } group ? $" of a {group}" : Group(tuplet));
    }

    /// <summary>Several of a value: "sixteenths", "sixteenth quintuplets", "triplets" for the usual eighth triplets.</summary>
    public static string Many(NoteValue value, Tuplet? tuplet) =>
        value == new NoteValue(ValueBase.Eighth) && tuplet == new Tuplet(3, 2, ValueBase.Eighth)
            ? "triplets"
            : GroupName(value, tuplet) is { } group ? $"{Named(value.Base).One} {group}s"
            : Dots(value) + Named(value.Base).Many + Group(tuplet);

    public static string Plain(ValueBase value) => Named(value).Many;

    /// <summary>Reads one or several of a value at a place in a row of words, articles taken out.</summary>
    public static bool TryRead(IReadOnlyList<string> words, ref int at, out (NoteValue Value, Tuplet? Tuplet) read)
    {
        read = default;
        if (at < words.Count && words[at] == "triplets")
        {
            at++;
            read = (new NoteValue(ValueBase.Eighth), new Tuplet(3, 2, ValueBase.Eighth));
            return true;
        }
        var place = at;
        var dots = place < words.Count ? words[place] switch { "dotted" => 1, "double-dotted" => 2, _ => 0 } : 0;
        if (dots > 0) place++;
        if (!TryBase(words, ref place, out var value)) return false;
        at = place;
        read = (new NoteValue(value, dots), TryGroupName(words, ref at, value, out var tuplet) || TryGroup(words, ref at, out tuplet) ? tuplet : null);
        return true;
    }

    private static bool TryBase(IReadOnlyList<string> words, ref int at, out ValueBase value)
    {
        foreach (var (candidate, one, many) in Names)
        {
            foreach (var name in new[] { one, many })
            {
                var parts = name.Split(' ');
                if (at + parts.Length > words.Count || !parts.SequenceEqual(words.Skip(at).Take(parts.Length))) continue;
                at += parts.Length;
                value = candidate;
                return true;
            }
        }
        value = default;
        return false;
    }

    // Groups of one value that have a name of their own.
    private static string? GroupName(NoteValue value, Tuplet? tuplet) =>
        value.Dots == 0 && tuplet is { } group && group.Unit == value.Base ? Array.Find(GroupNames, g => (g.Count, g.InTimeOf) == (group.Count, group.InTimeOf)).Name : null;

    // "sixteenth quintuplets", "sixteenth of a quintuplet"
    private static bool TryGroupName(IReadOnlyList<string> words, ref int at, ValueBase value, out Tuplet tuplet)
    {
        tuplet = default;
        var place = at < words.Count && words[at] == "of" ? at + 1 : at;
        if (place >= words.Count) return false;
        var name = words[place].TrimEnd('s');
        if (Array.Find(GroupNames, g => g.Name == name) is not { Name: not null } group) return false;
        tuplet = new Tuplet(group.Count, group.InTimeOf, value);
        at = place + 1;
        return true;
    }

    // " grouped nine in the time of eight sixteenths"
    private static string Group(Tuplet? tuplet) => tuplet is { } group
        ? $" grouped {NumberWords.Of(group.Count)} in the time of {NumberWords.Of(group.InTimeOf)} {Named(group.Unit).Many}"
        : "";

    private static bool TryGroup(IReadOnlyList<string> words, ref int at, out Tuplet tuplet)
    {
        tuplet = default;
        var place = at;
        if (place >= words.Count || words[place++] != "grouped") return false;
        if (!NumberWords.TryRead(words, ref place, out var count)) return false;
        foreach (var word in new[] { "in", "time", "of" })
        {
            if (place >= words.Count || words[place++] != word) return false;
        }
        if (!NumberWords.TryRead(words, ref place, out var inTimeOf) || !TryBase(words, ref place, out var unit)) return false;
        tuplet = new Tuplet(count, inTimeOf, unit);
        at = place;
        return true;
    }

    private static string Dots(NoteValue value) => value.Dots switch { 0 => "", 1 => "dotted ", _ => "double-dotted " };

    private static (ValueBase Value, string One, string Many) Named(ValueBase value) => Array.Find(Names, n => n.Value == value);
}
