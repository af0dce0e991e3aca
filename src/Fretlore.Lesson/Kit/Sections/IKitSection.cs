using System.Collections.Immutable;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>A section of the kit: some files that are made together.</summary>
/// <remarks>A section depends on nothing but its source, so that the same source gives the same bytes.</remarks>
internal interface IKitSection
{
    /// <summary>What is said while it is made, for example "Writing MIDI".</summary>
    string Doing { get; }

    /// <summary>Its share of the work, as against 1 for pages.</summary>
    double Weight { get; }

    /// <summary>All that its files depend on, to be compared by value: while it is the same, so are they.</summary>
    object InputOf(KitSource source) => (source.Song, source.Options);

    /// <summary>True when it takes long: it is made beside the others, and may be late in a kit that is made again at every save.</summary>
    bool IsSound => false;

    /// <summary>True when the song's sound is in its files, so that it can't be made before.</summary>
    bool HoldsSound => false;

    /// <param name="source">The song and what has been made of it.</param>
    /// <param name="progress">Told how much of this section is done, from 0 to 1.</param>
    /// <exception cref="OperationCanceledException">The source was told to stop.</exception>
    SectionResult Make(KitSource source, Action<double> progress);
}

/// <summary>What a section came to.</summary>
internal abstract record SectionResult
{
    private SectionResult()
    {
    }

    /// <summary>Its files, in the order they are listed; none where the song has nothing for it.</summary>
    /// <param name="Files">The files.</param>
    /// <param name="Cautions">What the teacher should know before handing them out, whole sentences.</param>
    public sealed record Made(ImmutableArray<KitFile> Files, params ImmutableArray<string> Cautions) : SectionResult;

    /// <summary>No kit can be made of this song.</summary>
    /// <param name="Reason">What is wrong, a whole sentence.</param>
    /// <param name="Remedy">What to do about it, a whole sentence.</param>
    public sealed record Refused(string Reason, string Remedy) : SectionResult;
}
