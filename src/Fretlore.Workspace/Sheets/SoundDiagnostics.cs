using Fretlore.Sound.Rigs;
using Fretlore.Syntax;

namespace Fretlore.Workspace.Sheets;

/// <summary>What of a sheet can't be heard as it asks: codes FL5001 to FL5099.</summary>
internal static class SoundDiagnostics
{
    /// <summary>A part asks for a rig that does not exist. Pages and words don't need it, so it is no error.</summary>
    public static Diagnostic NoSuchSound(TextSpan span, string name, string? suggestion) => new(
        "FL5001", Severity.Warning, span, $"There is no sound called `{name}`, so this song can't be played.",
        (suggestion is null ? "" : $"Perhaps `{suggestion}` was meant. ") + $"Sounds are {string.Join(", ", RigNames.All)}.");

    internal static IEnumerable<Diagnostic> Of(SheetSyntax sheet)
    {
        foreach (var setting in sheet.Blocks.OfType<PartSyntax>().SelectMany(part => part.Settings))
        {
            if (setting.Word.Text != "sound" || setting.Values.Length == 0 || RigNames.Has(setting.ValueText)) continue;
            var (first, last) = (setting.Values[0].Span, setting.Values[^1].Span);
            yield return NoSuchSound(TextSpan.FromBounds(first.Start, last.End), setting.ValueText, RigNames.NearestTo(setting.ValueText));
        }
    }
}
