using System.Diagnostics;
using System.Globalization;
using Fretlore.Cli.Output;
using Fretlore.Lesson.Kit;

namespace Fretlore.Cli.Files;

/// <summary>Keeps a kit up to date with its sheet: at each save what changed is made again; where much sound has changed, which takes longest, that follows when the sheet has been left alone for a while.</summary>
/// <param name="surroundings">Where it is told what was done.</param>
/// <param name="sheet">The sheet.</param>
/// <param name="folder">The kit.</param>
/// <param name="wish">How the kit is made.</param>
internal sealed class KitWatch(Surroundings surroundings, string sheet, KitFolder folder, KitWish wish) : IDisposable
{
    /// <summary>How long a sheet is left alone before its sound is made.</summary>
    public static TimeSpan Quiet { get; } = TimeSpan.FromSeconds(8);

    private readonly KitCache cache = new();
    private string? seen;
    private string? built;
    private TimeSpan changed;
    private bool owesSound;

    /// <summary>Looks at the sheet once, and makes what is due.</summary>
    /// <param name="now">The time; only differences count.</param>
    /// <param name="stop">Ends the making early; the kit stays as it was.</param>
    /// <returns>False when the folder can't be written.</returns>
    public bool Look(TimeSpan now, CancellationToken stop)
    {
        if (Text() is not { } text) return true;
        if (text != seen)
        {
            // Two looks must agree: an editor may be in the middle of writing.
            (seen, changed) = (text, now);
            if (built is not null) return true;
        }
        if (text != built)
        {
            built = text;
            return Build(takesOldSound: true, stop);
        }
        if (!owesSound || now - changed < Quiet) return true;
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stop);
        return Build(takesOldSound: false, either.Token, () =>
        {
            if (Text() != built) either.Cancel();
        });
    }

    public void Dispose() => cache.Dispose();

    private bool Build(bool takesOldSound, CancellationToken stop, Action? progress = null)
    {
        var watch = Stopwatch.StartNew();
        if (OpenedSheet.Open(surroundings, sheet, "The kit stays as it was", out _) is not var (workspace, song)) return NothingMade();
        var options = wish.For(song);
        if (options.Misread is { } misread)
        {
            WrongUse.Write(surroundings.Error, misread);
            return NothingMade();
        }
        cache.TakesOldSound = takesOldSound;
        KitResult result;
        try
        {
            result = workspace.MakeKit(options.Value, _ => progress?.Invoke(), cache, stop);
        }
        catch (OperationCanceledException)
        {
            // The sheet changed, or the watching ends; what is due is made at the next look.
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            ScratchFile.SayFull(surroundings, e);
            return NothingMade();
        }
        if (result is KitResult.Refused refused)
        {
            WrongUse.Write(surroundings.Error, $"the kit stays as it was: {refused.Reason}", refused.Remedy);
            return NothingMade();
        }
        owesSound = cache.TookOldSound;
        return Write((KitResult.Made)result, watch);
    }

    // The kit stays as it was; the next save may mend it.
    private bool NothingMade()
    {
        owesSound = false;
        return true;
    }

    private bool Write(KitResult.Made made, Stopwatch watch)
    {
        try
        {
            var before = folder.Hashes();
            var kept = folder.Write(made.Kit);
            var count = made.Kit.Files.Count(f => f.Path != KitList.FileName && before.GetValueOrDefault(f.Path) != f.Sha256);
            foreach (var name in kept) surroundings.Out.WriteLine($"You had changed a file of the kit: it is kept as {name}.");
            foreach (var caution in made.Cautions) surroundings.Out.WriteLine(Marked.Safe(caution));
            var took = watch.Elapsed.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture);
            var late = owesSound ? " The sound is still the old one; the new one is made when the sheet is left alone." : "";
            surroundings.Out.WriteLine($"Kit made in {took} s, {count} {(count == 1 ? "file" : "files")} changed.{late}");
            surroundings.Out.Flush();
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            WrongUse.Write(surroundings.Error, $"the kit can't be written: {Reason.Of(e)}", "Choose another folder with -o.");
            return false;
        }
    }

    // What is in the file; null while it is not there, as in the middle of a save.
    private string? Text()
    {
        try
        {
            return Convert.ToBase64String(AnyFile.Read(surroundings.PathOf(sheet)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
