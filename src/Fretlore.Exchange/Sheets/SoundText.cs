using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Where and what an event sounds: a fret, a bracket, a shape, a hold.</summary>
/// <param name="Where">A place to be written before it, or empty.</param>
/// <param name="Text">The sound with palm mutes left to a span.</param>
/// <param name="Muted">The sound with palm mutes as marks.</param>
internal readonly record struct SoundText(string Where, string Text, string Muted)
{
    /// <param name="notes">The notes of the event, held ones included.</param>
    /// <param name="holdsAll">True when all that sounded before is held and nothing else sounds.</param>
    /// <param name="roll">How it is spread.</param>
    /// <param name="shape">The name of a shape whose notes these are, or null.</param>
    /// <param name="next">The strings of the next event that has any, for choosing what to say; or null.</param>
    /// <param name="neck">The neck.</param>
    /// <param name="hand">The strand; its place changes.</param>
    public static SoundText Of(
        IReadOnlyList<Note> notes, bool holdsAll, Roll roll, string? shape, ImmutableArray<StringNumber>? next, Neck neck, StrandHand hand)
    {
        if (holdsAll) return Plain("=" + NoteText.Moves(notes[0]));
        var spread = roll switch { Roll.LowToHigh => "roll", Roll.HighToLow => "roll-down", Roll.Rake => "rake", _ => "" };
        if (shape is not null) return Both("", palm => $"{spread}#{shape}{Outer(notes, palm && !IsLetterFirst(Outer(notes, true)))}");
        var strings = notes.Select(n => n.String).ToImmutableArray();
        var isOne = roll == Roll.None && notes.All(n => !n.IsTiedFromBefore) && notes.Select(n => NoteText.Of(n, true)).Distinct().Count() == 1;
        if (isOne) return OnPlace(notes, strings, next, hand);
        var slots = Slots(notes, strings, next, neck, hand, out var where);
        var bendOutside = SharedMoves(notes) is { Length: > 0 };
        return Both(where, palm => $"{spread}[{string.Join(' ', slots.Select(s => Slot(s, notes, palm, bendOutside)))}]{(bendOutside ? SharedMoves(notes) : "")}{SharedPalm(notes, palm)}");
    }

    private static SoundText Plain(string text) => new("", text, text);

    private static SoundText Both(string where, Func<bool, string> text) => new(where, text(false), text(true));

    // One fret on one string or, with one finger, on several.
    private static SoundText OnPlace(IReadOnlyList<Note> notes, ImmutableArray<StringNumber> strings, ImmutableArray<StringNumber>? next, StrandHand hand)
    {
        if (hand.Place.SequenceEqual(strings)) return Both("", palm => NoteText.Of(notes[0], palm));
        if (strings.Length == 1 && hand.Place.Length == 1 && next is { } after && after.SequenceEqual(hand.Place))
        {
            return Both("", palm => $"{NoteText.Of(notes[0], palm)}@{strings[0]}");
        }
        hand.Place = strings;
        return Both("@" + SheetWords.Strings(strings), palm => NoteText.Of(notes[0], palm));
    }

    private static ImmutableArray<StringNumber> Slots(
        IReadOnlyList<Note> notes, ImmutableArray<StringNumber> strings, ImmutableArray<StringNumber>? next, Neck neck, StrandHand hand, out string where)
    {
        where = "";
        var place = hand.Place;
        if (place.SequenceEqual(strings)) return strings;
        // A slot or two left empty is easier to read than a new place.
        if (place.Length is > 1 and < 5 && strings.Length > 1 && strings.Length >= place.Length - 1 && strings.All(s => place.Contains(s))) return place;
        var isWide = notes.Count > 3 || strings.Length > 1 && strings[0].Value - strings[^1].Value >= 4 || notes.Count == 1;
        var staysElsewhere = next is { } after && !after.SequenceEqual(strings) && place.Length > 0;
        if (isWide || (staysElsewhere && notes.Count > 2)) return [.. Enumerable.Range(1, neck.StringCount).Reverse().Select(n => new StringNumber(n))];
        hand.Place = strings;
        where = "@" + SheetWords.Strings(strings);
        return strings;
    }

    private static string Slot(StringNumber number, IReadOnlyList<Note> notes, bool palm, bool bendOutside)
    {
        var note = notes.FirstOrDefault(n => n.String == number);
        if (note is null) return ".";
        if (note.IsTiedFromBefore) return "=" + NoteText.Moves(note);
        return NoteText.Of(note, palm && SharedPalm(notes, true).Length == 0, !bendOutside);
    }

    /// <summary>True when a shape's marks would be read as part of its name.</summary>
    public static bool IsLetterFirst(string marks) => marks.Length > 0 && (char.IsLetterOrDigit(marks[0]) || marks[0] is '-' or '.');

    /// <summary>Marks that all notes of a shape share.</summary>
    public static string Outer(IReadOnlyList<Note> notes, bool palm)
    {
        var plain = notes[0] with { Fret = Fret.Open, Attack = Attack.Picked, IsDead = false, Harmonic = null };
        return NoteText.Of(plain with { IsPalmMuted = plain.IsPalmMuted }, palm)[1..];
    }

    private static string SharedPalm(IReadOnlyList<Note> notes, bool palm)
    {
        var fresh = notes.Where(n => !n.IsTiedFromBefore).ToList();
        return palm && fresh.Count > 0 && fresh.All(n => n.IsPalmMuted) ? "m" : "";
    }

    private static string? SharedMoves(IReadOnlyList<Note> notes)
    {
        var fresh = notes.Where(n => !n.IsTiedFromBefore).ToList();
        if (fresh.Count < 2 || fresh.Any(n => n.Bend is { FromCents: > 0 })) return null;
        var moves = fresh.Select(NoteText.Moves).Distinct().ToList();
        return moves.Count == 1 ? moves[0] : null;
    }
}
