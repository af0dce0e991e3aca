using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout;
using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Lesson.Kit;

/// <summary>How a kit is made.</summary>
public sealed record KitOptions
{
    public PaperPreset Paper { get; init; } = PaperPreset.A4;

    /// <summary>Staff with tablature, or one of them.</summary>
    public Notation Show { get; init; }

    /// <summary>Indexes into the song's parts of those on the pages; empty for all. The other files always have all parts.</summary>
    public ValueList<int> Parts { get; init; }

    /// <summary>How chord symbols are written on pages.</summary>
    public ChordStyle SymbolStyle { get; init; }

    /// <summary>Whether each note's degree stands below it.</summary>
    public bool Degrees { get; init; }

    /// <summary>What of the hands stands on the pages.</summary>
    public HandSignOptions Hands { get; init; } = HandSignOptions.Printed;

    /// <summary>Gives empty streams that can be written, read and sought, for sound to be worked out in; null for a kit without sound.</summary>
    public Func<Stream>? SoundRoom { get; init; }
}

/// <summary>A kit, or why none can be made of a song.</summary>
public abstract record KitResult
{
    private KitResult()
    {
    }

    /// <summary>The kit.</summary>
    /// <param name="Kit">Its files.</param>
    /// <param name="Cautions">What the teacher should know before handing it out, whole sentences.</param>
    public sealed record Made(LessonKit Kit, ValueList<string> Cautions) : KitResult;

    /// <summary>No kit can be made.</summary>
    /// <param name="Reason">What is wrong, a whole sentence.</param>
    /// <param name="Remedy">What to do about it, a whole sentence.</param>
    public sealed record Refused(string Reason, string Remedy) : KitResult;
}
