using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts;

/// <summary>Spoken text as a row of breaths: whole sentences short enough to say in one go.</summary>
/// <param name="Breaths">Each a sentence with its full stop.</param>
public sealed record Speech(ValueList<string> Breaths)
{
    public static Speech Silence => new([]);

    public int WordCount => Breaths.Sum(b => b.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length);

    /// <summary>The whole text in one line.</summary>
    public override string ToString() => string.Join(' ', Breaths);
}

/// <summary>What a teacher says about one riff, in three lengths.</summary>
/// <param name="Riff">The riff's name in the sheet.</param>
/// <param name="SpokenName">The name as said.</param>
/// <param name="Headline">What it is, in a breath or two.</param>
/// <param name="WalkThrough">Every string and fret in order, repeats merged, rhythm where it matters.</param>
/// <param name="NoteByNote">Every note with its value and all that is done to it.</param>
public sealed record CallOut(string Riff, string SpokenName, Speech Headline, Speech WalkThrough, Speech NoteByNote)
{
    /// <summary>What was held back because its words, read back into notes, are not the riff; a whole sentence. Null when all of it is proven.</summary>
    public string? Caution { get; init; }
}
