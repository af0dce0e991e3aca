namespace Fretlore.Lesson.CallOuts;

/// <summary>How single strings are called.</summary>
public enum StringNaming
{
    /// <summary>The lowest is "the low string", the others go by number.</summary>
    LowString,

    /// <summary>All by number: "the sixth string".</summary>
    Number,

    /// <summary>By the open string's note: "the low A string", "the F sharp string".</summary>
    Pitch,
}

/// <summary>The teacher's way of speaking.</summary>
/// <param name="Strings">How single strings are called.</param>
public sealed record CallOutStyle(StringNaming Strings = StringNaming.LowString);
