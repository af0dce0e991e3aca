using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>Where a note is drawn.</summary>
/// <param name="Staff">Index of the shown part.</param>
/// <param name="Slot">The event it belongs to.</param>
/// <param name="Head">Index among the slot's heads, or among its grace notes.</param>
/// <param name="IsGrace">Whether it is a grace note.</param>
/// <param name="Rule">Its voice's side where two voices share the staff.</param>
internal sealed record PlacedNote(int Staff, Slot Slot, int Head, bool IsGrace, StemSide Rule)
{
    public Head Sign => IsGrace ? Slot.Graces[Head] : Slot.Heads[Head];

    public Note Note => Sign.Note;
}

/// <summary>A note with the one before and after it on its string, as ties, slurs and glides need them.</summary>
internal sealed class Links
{
    private readonly PlacedNote?[] placed;
    private readonly PlacedNote?[] before;
    private readonly PlacedNote?[] after;

    private Links(int noteCount)
    {
        placed = new PlacedNote?[noteCount];
        before = new PlacedNote?[noteCount];
        after = new PlacedNote?[noteCount];
    }

    public static Links Of(IEnumerable<PlacedNote> notesInOrder, int staffCount, int noteCount)
    {
        var links = new Links(noteCount);
        var last = new PlacedNote?[staffCount, 16];
        foreach (var note in notesInOrder)
        {
            links.placed[note.Note.Id.Index] = note;
            var number = note.Note.String.Value;
            if (last[note.Staff, number] is { } earlier)
            {
                links.before[note.Note.Id.Index] = earlier;
                links.after[earlier.Note.Id.Index] = note;
            }
            last[note.Staff, number] = note;
        }
        return links;
    }

    /// <summary>Where a note of the shown parts is drawn.</summary>
    public PlacedNote this[Note note] => placed[note.Id.Index]!;

    /// <summary>The note before on the same string, wherever it is.</summary>
    public PlacedNote? Before(Note note) => before[note.Id.Index];

    public PlacedNote? After(Note note) => after[note.Id.Index];

    /// <summary>The note this one goes on sounding as, if that is drawn.</summary>
    public PlacedNote? TiedTo(Note note) => note.IsHeldOn && After(note) is { } next && next.Note.IsTiedFromBefore ? next : null;

    /// <summary>The next note when it is reached from this one by hammering, pulling off or gliding.</summary>
    public PlacedNote? LeadsTo(Note note) => After(note) is { } next && IsReached(next.Note.Attack) ? next : null;

    private static bool IsReached(Attack attack) => attack is Attack.HammerOn or Attack.PullOff or Attack.Glide or Attack.PickedGlide;
}
