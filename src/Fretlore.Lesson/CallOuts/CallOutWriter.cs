using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts;

/// <summary>Writes what a teacher says on camera about the riffs of a song, and proves it: all three lengths are read back and held against the riff.</summary>
public static class CallOutWriter
{
    /// <summary>One call-out for each riff of the song, in the sheet's order.</summary>
    /// <param name="song">The song.</param>
    /// <param name="reading">Names for shapes, or null to go without.</param>
    /// <param name="style">The teacher's way of speaking; null for the usual one.</param>
    /// <param name="hands">The hand plan, for positions and hard places; null to go without.</param>
    public static IReadOnlyList<CallOut> For(Song song, SongReading? reading = null, CallOutStyle? style = null, SongHands? hands = null)
    {
        var context = CallOutContext.Of(song, reading, style ?? new CallOutStyle(), hands);
        return [.. song.Riffs.Select(r => For(r, context))];
    }

    internal static CallOut For(Riff riff, CallOutContext context)
    {
        var told = new CallOut(
            riff.Name,
            SpokenName.Of(riff.Name),
            new Headline(riff, context).Tell(),
            new RiffTeller(riff, context, Detail.WalkThrough).Tell(),
            new RiffTeller(riff, context, Detail.NoteByNote).Tell());
        return ProvenCallOut.Of(told, riff, context);
    }
}
