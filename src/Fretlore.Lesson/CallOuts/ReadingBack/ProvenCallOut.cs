using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>Lets nothing be said that, read back, is not the riff.</summary>
internal static class ProvenCallOut
{
    private static Speech Withheld => new(["Read this one from the tab."]);

    /// <summary>The call-out as it is, where all of it is proven; otherwise without what is not, and with a caution.</summary>
    /// <remarks>A headline loses the sentences that are not so; a walk-through gives way to the note-by-note telling; where that fails as well, the tab has to do.</remarks>
    /// <param name="told">What would be said.</param>
    /// <param name="riff">The riff it is about.</param>
    /// <param name="context">What it may point at, and the way of speaking it was written in.</param>
    public static CallOut Of(CallOut told, Riff riff, CallOutContext context)
    {
        var (riffs, style) = (context.Riffs, context.Style);
        var check = new HeadlineCheck(riff, context);
        var headline = check.Problem(told.Headline);
        var walk = CallOutCheck.Problem(riff, told.WalkThrough, Detail.WalkThrough, riffs, style);
        var notes = CallOutCheck.Problem(riff, told.NoteByNote, Detail.NoteByNote, riffs, style);
        if (headline is null && walk is null && notes is null) return told;
        return told with
        {
            Headline = headline is null ? told.Headline : check.Proven(told.Headline),
            WalkThrough = walk is null ? told.WalkThrough : notes is null ? told.NoteByNote : Withheld,
            NoteByNote = notes is null ? told.NoteByNote : Withheld,
            Caution = Caution(told.Riff, headline, walk, notes),
        };
    }

    private static string Caution(string riff, string? headline, string? walk, string? notes) => (walk, notes) switch
    {
        (null, null) => $"A sentence of the headline of {riff} is left out, for it is not so when it is read back ({headline}).",
        (_, null) => $"The walk-through of {riff} does not give the riff back when it is read ({walk}): it is told note by note instead.",
        _ => $"The note-by-note telling of {riff} does not give the riff back when it is read ({notes}): it is left to the tab.",
    };
}
