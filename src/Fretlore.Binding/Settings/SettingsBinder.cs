using System.Text.RegularExpressions;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Settings;

/// <summary>Binds the settings at the top of a sheet.</summary>
internal static partial class SettingsBinder
{
    public static SongSettings Bind(SheetSyntax sheet, DiagnosticBag problems)
    {
        var song = new SongSettings { Info = new SongInfo(""), Neck = new NeckSettings() };
        var seen = new HashSet<string>();
        foreach (var setting in sheet.Blocks.OfType<SettingSyntax>())
        {
            if (!seen.Add(setting.Word.Text)) problems.Add(SettingProblems.SaidTwice(setting.Word.Span, setting.Word.Text));
            song = Read(song, setting, problems);
        }
        if (sheet.Blocks.IsEmpty) return song;
        if (sheet.Blocks.OfType<SettingSyntax>().FirstOrDefault(s => s.Word.Text == "gauges") is { } gauges && song.Neck.Tuning is { } tuning)
        {
            NeckReader.CheckGauges(song.Neck, tuning, gauges.Span, problems);
        }
        // With parts, each is told for its own strings.
        if (!sheet.Blocks.OfType<PartSyntax>().Any() && song.Neck is { Capo: { } capo, Tuning: { } strings }
            && sheet.Blocks.OfType<SettingSyntax>().LastOrDefault(s => s.Word.Text == "capo") is { } said)
        {
            CapoReader.Check(capo, strings, said.Span, problems);
        }
        var top = new TextSpan(0, 0);
        if (!seen.Contains("title")) problems.Add(SettingProblems.NoTitle(top));
        if (!seen.Contains("tempo")) problems.Add(SettingProblems.TempoTaken(top));
        return song;
    }

    private static SongSettings Read(SongSettings song, SettingSyntax setting, DiagnosticBag problems)
    {
        var words = SheetWord.From(setting.Values);
        var span = setting.Span;
        switch (setting.Word.Text)
        {
            case "title":
                return song with { Info = song.Info with { Title = Text(setting, problems) } };
            case "artist":
                return song with { Info = song.Info with { Artist = Text(setting, problems) } };
            case "credits":
                return song with { Info = song.Info with { Credits = Text(setting, problems) } };
            case "rights":
                return song with { Info = song.Info with { Rights = Text(setting, problems) } };
            case "permission":
                return song with { Info = song.Info with { Permission = Text(setting, problems) } };
            case "language":
                return song with { Info = song.Info with { Language = Language(setting, problems) } };
            case "meter":
                return song with { Meter = ChangeReader.Meter(words, span, problems) ?? song.Meter };
            case "tempo":
                return song with { Tempo = ChangeReader.Tempo(words, span, problems) ?? song.Tempo };
            case "key":
                return song with { Key = ChangeReader.Key(words, span, problems) ?? song.Key };
            case "feel":
                return song with { Feel = ChangeReader.Feel(words, span, problems) ?? song.Feel };
            default:
                return song with { Neck = NeckReader.Read(song.Neck, setting, problems) };
        }
    }

    // Well-formed as BCP 47 asks: whether anybody registered it is not looked up.
    private static string? Language(SettingSyntax setting, DiagnosticBag problems)
    {
        var tag = Text(setting, problems);
        if (tag.Length == 0) return null;
        if (LanguageTag().IsMatch(tag)) return tag;
        problems.Add(SettingProblems.NoLanguage(setting.Span, tag));
        return null;
    }

    [GeneratedRegex("^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$", RegexOptions.CultureInvariant)]
    private static partial Regex LanguageTag();

    private static string Text(SettingSyntax setting, DiagnosticBag problems)
    {
        if (setting.Values.IsEmpty) problems.Add(SettingProblems.NothingSaid(setting.Span, setting.Word.Text));
        return SheetWord.Unquote(setting.ValueText.Trim());
    }
}
