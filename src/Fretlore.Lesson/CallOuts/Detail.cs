namespace Fretlore.Lesson.CallOuts;

/// <summary>How much a call-out says.</summary>
internal enum Detail
{
    /// <summary>Strings, frets and techniques; repeats merged; rhythm only where it matters.</summary>
    WalkThrough,

    /// <summary>Everything, with the value of each note.</summary>
    NoteByNote,
}
