using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>Proves a call-out: its words, read back into notes, are the riff.</summary>
public static class CallOutCheck
{
    /// <summary>Where a call-out, read back, differs from its riff; null when all three lengths are the riff.</summary>
    /// <param name="callOut">What is said.</param>
    /// <param name="song">The song the riff stands in.</param>
    /// <param name="style">The way of speaking it was written in; null for the usual one.</param>
    /// <param name="hands">The hand plan it was written with; null when it was written without.</param>
    /// <remarks>
    /// A headline is read back into what it says of the notes, which must be what there is to say of them (see <see cref="HeadlineCheck"/>). The walk-through is held to strings, frets, order and techniques, the note-by-note telling to the values as well. What is left to the
    /// page: dynamics, words above the staff, chord symbols, tempo, and in a walk-through fingers and strokes.
    /// </remarks>
    public static string? Problem(CallOut callOut, Song song, CallOutStyle? style = null, SongHands? hands = null)
    {
        var riff = song.Riffs.FirstOrDefault(r => r.Name == callOut.Riff);
        if (riff is null) return $"the song has no riff {callOut.Riff}";
        return new HeadlineCheck(riff, CallOutContext.Of(song, null, style ?? new CallOutStyle(), hands)).Problem(callOut.Headline)
            ?? Problem(riff, callOut.WalkThrough, Detail.WalkThrough, song.Riffs, style)
            ?? Problem(riff, callOut.NoteByNote, Detail.NoteByNote, song.Riffs, style);
    }

    internal static string? Problem(Riff riff, Speech speech, Detail detail, ValueList<Riff> riffs, CallOutStyle? style)
    {
        var strings = new StringWords(riff.Neck.Tuning, (style ?? new CallOutStyle()).Strings);
        var read = RiffReader.Read(speech, strings, name =>
            riffs.FirstOrDefault(r => r.Name != riff.Name && SpokenName.Of(r.Name) == name), detail);
        if (read.Problem is not null) return read.Problem;
        if (read.Bars.Count != riff.Content.Count) return $"{read.Bars.Count} bars were heard, {riff.Content.Count} are written";
        if (!read.Repeats.SequenceEqual(RiffReader.Repeats(riff))) return "the repeats differ";
        for (var bar = 0; bar < riff.Content.Count; bar++)
        {
            if (Difference(riff.Content[bar], read.Bars[bar], detail) is { } difference) return $"bar {bar + 1}: {difference}";
        }
        return null;
    }

    internal static string? Difference(PartBar written, ValueList<ReadStrand> heard, Detail detail)
    {
        if (written.Strands.Count != heard.Count) return $"{heard.Count} lines were heard, {written.Strands.Count} are written";
        for (var line = 0; line < heard.Count; line++)
        {
            var (strand, read) = (written.Strands[line], heard[line]);
            if (strand.Kind != read.Kind || strand.Start != read.Start) return $"line {line + 1} is another or comes in elsewhere";
            if (strand.Events.Count != read.Events.Count) return $"{read.Events.Count} events were heard, {strand.Events.Count} are written";
            for (var i = 0; i < read.Events.Count; i++)
            {
                var (was, now) = (SpokenForm.Of(strand.Events[i], detail), SpokenForm.Of(read.Events[i], detail));
                if (was != now) return $"event {i + 1} was heard as {Told(now)}, written is {Told(was)}";
            }
        }
        return null;
    }

    private static string Told(Event item) =>
        $"{item.Value.Base} with {item.Value.Dots} dots {item.Tuplet} {item.Roll} {item.Stroke} {item.Spans} "
        + string.Join(", ", item.Graces.Concat(item.Notes).Select(n => n.ToString()));
}
