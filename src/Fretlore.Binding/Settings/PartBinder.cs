using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Settings;

/// <summary>A part before it has music.</summary>
internal sealed record DeclaredPart(string Name, string Title, Neck Neck, ValueList<GuitarString> Strings, string? Sound);

/// <summary>Binds the parts of a sheet.</summary>
internal static class PartBinder
{
    /// <summary>In the order written. A sheet that has none has one guitar.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="song">Its settings.</param>
    /// <param name="otherwise">The neck where nothing is said.</param>
    /// <param name="problems">Where findings go.</param>
    public static ImmutableArray<DeclaredPart> Bind(SheetSyntax sheet, SongSettings song, Neck otherwise, DiagnosticBag problems)
    {
        var parts = ImmutableArray.CreateBuilder<DeclaredPart>();
        var seen = new HashSet<string>();
        foreach (var part in sheet.Blocks.OfType<PartSyntax>())
        {
            if (part.Name.IsMissing) continue;
            if (!seen.Add(part.Name.Text)) problems.Add(NameProblems.DeclaredTwice(part.Name, "part"));
            else parts.Add(Bind(part, song, otherwise, problems));
        }
        if (parts.Count == 0) parts.Add(new DeclaredPart("guitar", "Guitar", song.Neck.On(otherwise), song.Neck.StringsOn(song.Neck.On(otherwise)), null));
        return parts.DrainToImmutable();
    }

    private static DeclaredPart Bind(PartSyntax part, SongSettings song, Neck otherwise, DiagnosticBag problems)
    {
        var neck = new NeckSettings();
        string? sound = null;
        foreach (var setting in part.Settings)
        {
            neck = NeckReader.Read(neck, setting, problems);
            if (setting.Word.Text != "sound") continue;
            var words = SheetWord.From(setting.Values);
            if (words.Length == 0) problems.Add(SettingProblems.NothingSaid(setting.Span, "sound"));
            else sound = SheetWord.Join(words);
        }
        if (part.Settings.FirstOrDefault(s => s.Word.Text == "gauges") is { } gauges && (neck.Tuning ?? song.Neck.Tuning) is { } tuning)
            NeckReader.CheckGauges(neck, tuning, gauges.Span, problems);
        if ((neck.Capo ?? song.Neck.Capo) is { } capo && (neck.Tuning ?? song.Neck.Tuning) is { } strings)
            CapoReader.Check(capo, strings, part.Settings.FirstOrDefault(s => s.Word.Text == "capo")?.Span ?? part.Name.Span, problems);
        if (neck.Tuning is null && song.Neck.Tuning is null) problems.Add(SettingProblems.NoTuning(part.Name.Span));
        var title = part.Title is { IsMissing: false } text ? SheetWord.Unquote(text.Text) : "";
        var whole = neck.Over(song.Neck);
        var strung = whole.On(otherwise);
        return new DeclaredPart(part.Name.Text, title.Length > 0 ? title : part.Name.Text, strung, whole.StringsOn(strung), sound);
    }
}
