namespace Fretlore.Lesson.Kit;

/// <summary>Whom a file of the kit is for.</summary>
public enum Audience
{
    /// <summary>Those who support the teacher's work: the full transcription and all that goes with it.</summary>
    Supporters,

    /// <summary>Anyone: what is given away.</summary>
    Everyone,

    /// <summary>The teacher alone: what is filmed and published with.</summary>
    Teacher,
}
