using System.Globalization;
using System.Text;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi;

/// <summary>How a bar is written, in words beside its keys: lines, values, strings, grace notes, rolls. The keys alone say what sounds.</summary>
/// <remarks>
/// <c>|1@0</c> begins line 1 (main, 2 bass, 3 drone, 4 top) at so many quarters from the bar's start. An event is its value (<c>4</c> a quarter,
/// <c>8.</c> a dotted eighth), its tuplet (<c>:3:2:8</c>), how it is struck (<c>&lt;</c> rolled up, <c>&gt;</c> down, <c>%</c> raked, then <c>d</c> or
/// <c>u</c> for a stroke), its grace notes (<c>^3</c> on string 3) and its notes (<c>/3</c>). After a string stand <c>k64</c>, its key, where another string plays on its channel, <c>=</c> for held, <c>~</c> or
/// <c>-</c> for reached by a glide that is not or is picked, <c>s</c> for staccato, <c>r</c> for let ring, <c>*32</c> for a tremolo in 32nds,
/// <c>!7</c> for a trill with fret 7, <c>x5</c> for five keys instead of one.
/// </remarks>
internal static class BarWords
{
    /// <summary>What stands before them.</summary>
    public const string Word = "Written: ";

    /// <summary>The words for a bar.</summary>
    /// <param name="bar">A bar of one part.</param>
    /// <param name="keysOf">How many keys a note is played with; 0 for one that only sounds on.</param>
    /// <param name="shared">The strings that share a channel with others.</param>
    public static string Of(PartBar bar, Func<NoteId, int> keysOf, HashSet<StringNumber> shared)
    {
        var words = new StringBuilder(Word);
        foreach (var strand in bar.Strands)
        {
            words.Append(CultureInfo.InvariantCulture, $"|{(int)strand.Kind + 1}@{strand.Start.Numerator}/{strand.Start.Denominator} ");
            foreach (var item in strand.Events)
            {
                Write(item, keysOf, shared, words);
                words.Append(' ');
            }
        }
        return words.ToString().TrimEnd();
    }

    private static void Write(Event item, Func<NoteId, int> keysOf, HashSet<StringNumber> shared, StringBuilder words)
    {
        words.Append((int)item.Value.Base).Append('.', item.Value.Dots);
        if (item.Tuplet is { } t) words.Append(CultureInfo.InvariantCulture, $":{t.Count}:{t.InTimeOf}:{(int)t.Unit}");
        words.Append(item.Roll switch { Roll.LowToHigh => "<", Roll.HighToLow => ">", Roll.Rake => "%", _ => "" });
        words.Append(item.Stroke switch { Stroke.Down => "d", Stroke.Up => "u", _ => "" });
        foreach (var grace in item.Graces) Write('^', grace, Spans.None, keysOf(grace.Id), shared, words);
        foreach (var note in item.Notes) Write('/', note, item.Spans, keysOf(note.Id), shared, words);
    }

    private static void Write(char sign, Note note, Spans spans, int keys, HashSet<StringNumber> shared, StringBuilder words)
    {
        var isHeld = note.IsTiedFromBefore && keys == 0;
        words.Append(sign).Append(note.String.Value);
        if (!isHeld && shared.Contains(note.String)) words.Append('k').Append(Math.Clamp(note.Sounding.Midi, 0, 127));
        if (isHeld) words.Append('=');
        if (note.Attack is Attack.Glide or Attack.PickedGlide) words.Append(note.Attack == Attack.Glide ? '~' : '-');
        if (note.IsStaccato) words.Append('s');
        if (note.LetsRing) words.Append('r');
        if ((note.Tremolo ?? (spans.HasFlag(Spans.TremoloPicking) ? ValueBase.ThirtySecond : null)) is { } stroke) words.Append('*').Append((int)stroke);
        if (note.Trill is { } other) words.Append('!').Append(other.Number);
        if (!isHeld && keys != 1) words.Append('x').Append(keys);
    }
}
