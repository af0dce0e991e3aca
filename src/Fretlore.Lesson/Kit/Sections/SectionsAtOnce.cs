using System.Collections.Immutable;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>Makes a kit's sections: sound, which takes longest, after those that are quickly made, or beside them where it was made before, and what holds the song's sound beside its loops and licks.</summary>
/// <remarks>What goes wrong with one ends the others.</remarks>
/// <param name="source">What they are made of, stopped by <paramref name="ending"/>.</param>
/// <param name="sections">The sections, in the order their files are listed.</param>
/// <param name="shares">Told how far each is.</param>
/// <param name="ending">Ends them all.</param>
internal sealed class SectionsAtOnce(KitSource source, ImmutableArray<IKitSection> sections, KitShares shares, CancellationTokenSource ending)
{
    private readonly SectionResult?[] made = new SectionResult?[sections.Length];

    /// <returns>What each section came to, in their order; a refusal alone.</returns>
    /// <exception cref="OperationCanceledException">The source was told to stop.</exception>
    public ImmutableArray<SectionResult> Make()
    {
        // Where sound was made before, the runtime has compiled it at its best, and what changed of it is made beside the other sections.
        var again = source.Cache is { HasSound: true } ? Task.Run(() => EndingAll(() => _ = source.Sound())) : Task.CompletedTask;
        try
        {
            EndingAll(MakeQuick);
        }
        finally
        {
            if (Refusal is not null) ending.Cancel();
            Finish(again);
        }
        if (Refusal is { } refused) return [refused];
        // The runtime compiles what runs long anew and faster, but not before it has had nothing new to compile for a while: beside the other
        // sections sound takes half as much again of the processor's time.
        var sound = Task.Run(() => EndingAll(MakeSound));
        try
        {
            EndingAll(MakeHolders);
        }
        finally
        {
            // Why the sound failed says more than that the others were ended for it, and is thrown in their place.
            Finish(sound);
        }
        source.Stop.ThrowIfCancellationRequested();
        return [.. made.OfType<SectionResult>()];
    }

    private SectionResult.Refused? Refusal => made.OfType<SectionResult.Refused>().FirstOrDefault();

    private void MakeQuick()
    {
        for (var i = 0; i < sections.Length && Refusal is null; i++)
        {
            if (sections[i].IsSound || sections[i].HoldsSound) continue;
            shares.Begin(sections[i].Doing);
            Make(i);
        }
    }

    private void MakeHolders()
    {
        var plays = sections.FirstOrDefault(section => section.IsSound)?.Doing;
        if (plays is not null)
        {
            shares.Begin(plays);
            _ = source.Sound();
        }
        for (var i = 0; i < sections.Length; i++)
        {
            if (!sections[i].HoldsSound) continue;
            shares.Begin(sections[i].Doing);
            Make(i);
        }
        if (plays is not null) shares.Begin("Playing loops and licks");
    }

    private void MakeSound()
    {
        for (var i = 0; i < sections.Length; i++)
        {
            if (sections[i].IsSound) Make(i);
        }
    }

    private void Make(int i)
    {
        source.Stop.ThrowIfCancellationRequested();
        var (section, share) = (sections[i], shares.Piece(sections[i].Weight));
        made[i] = source.Once(section.GetType().Name, section.InputOf(source), () => section.Make(source, share), section.IsSound);
        share(1);
    }

    private void EndingAll(Action make)
    {
        try
        {
            make();
        }
        catch
        {
            ending.Cancel();
            throw;
        }
    }

    private void Finish(Task sound)
    {
        try
        {
            sound.GetAwaiter().GetResult();
        }
        catch (OperationCanceledException) when (ending.IsCancellationRequested)
        {
        }
    }
}
