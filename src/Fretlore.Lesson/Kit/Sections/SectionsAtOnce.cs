using System.Collections.Immutable;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>Makes a kit's sections: the sound, which takes longest, beside the others from the start on, and what holds the sound last.</summary>
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
        var sound = Task.Run(() => EndingAll(MakeSound));
        try
        {
            EndingAll(MakeOthers);
        }
        finally
        {
            // Why the sound failed says more than that the others were ended for it, and is thrown in their place.
            Finish(sound);
        }
        if (made.OfType<SectionResult.Refused>().FirstOrDefault() is { } refused) return [refused];
        source.Stop.ThrowIfCancellationRequested();
        return [.. made.OfType<SectionResult>()];
    }

    private void MakeSound()
    {
        for (var i = 0; i < sections.Length; i++)
        {
            if (sections[i].IsSound) Make(i);
        }
    }

    private void MakeOthers()
    {
        var plays = sections.FirstOrDefault(section => section.IsSound)?.Doing;
        foreach (var (i, section) in sections.Index().Where(s => !s.Item.IsSound).OrderBy(s => s.Item.HoldsSound))
        {
            if (plays is not null && section.HoldsSound)
            {
                shares.Begin(plays);
                _ = source.Sound();
            }
            shares.Begin(section.Doing);
            Make(i);
            if (made[i] is not SectionResult.Refused) continue;
            ending.Cancel();
            return;
        }
        if (plays is not null) shares.Begin("Playing loops and licks");
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
