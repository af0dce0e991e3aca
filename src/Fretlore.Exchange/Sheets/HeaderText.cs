using System.Globalization;
using System.Text;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>The settings at the top of a sheet, its parts and its shapes.</summary>
internal static class HeaderText
{
    private const int DefaultFrets = 24;
    private const double DefaultScaleLength = 648;

    public static void Write(Song song, StringBuilder text)
    {
        var first = song.Bars[0];
        var neck = song.Parts[0].Neck;
        Setting("title", SheetWords.Value(song.Info.Title));
        if (song.Info.Artist is { } artist) Setting("artist", SheetWords.Value(artist));
        if (song.Info.Credits is { } credits) Setting("credits", SheetWords.Value(credits));
        if (song.Info.Rights is { } rights) Setting("rights", SheetWords.Value(rights));
        if (song.Info.Permission is { } permission) Setting("permission", SheetWords.Value(permission));
        if (song.Info.Language is { } language) Setting("language", language);
        Setting("tuning", neck.Tuning.ToString());
        if (!neck.Capo.IsOff) Setting("capo", neck.Capo.ToString());
        Setting("meter", SheetWords.Of(first.Meter));
        Setting("tempo", SheetWords.Of(TempoOf(song)));
        if (first.Key is { } key) Setting("key", SheetWords.Of(key));
        if (first.FeelChange is { } feel && feel != Feel.Straight) Setting("feel", SheetWords.Of(feel));
        if (neck.FretCount != DefaultFrets) Setting("frets", SheetWords.Of(neck.FretCount));
        if (neck.ScaleLength != DefaultScaleLength || neck.LowScaleLength is not null) Setting("scale-length", Length(neck));
        var strings = StringsOf(song.Parts[0]);
        var isShared = song.Parts.All(p => p.Neck.StringCount != neck.StringCount || StringsOf(p) == strings);
        if (isShared && strings.Count > 0) Setting("gauges", Gauges(strings));
        text.Append('\n');
        foreach (var part in song.Parts) WritePart(part, neck, isShared ? strings : [], text);
        foreach (var shape in song.Shapes) text.Append(CultureInfo.InvariantCulture, $"shape {shape.Name} [{string.Join(' ', shape.Shape.LowToHigh.Select((f, i) => Slot(f, shape.Fingers.Count > 0 ? shape.Fingers[i] : null)))}]\n");
        if (song.Shapes.Count > 0) text.Append('\n');

        void Setting(string word, string value)
        {
            if (value.Length > 0) text.Append(word.PadRight(7)).Append(' ').Append(value).Append('\n');
        }
    }

    private static string Slot(Fret? fret, Finger? finger) => fret is null ? "." : finger is { } held ? string.Create(CultureInfo.InvariantCulture, $"{fret}f{(int)held}") : fret.Value.ToString();

    /// <summary>The tempo the song begins with.</summary>
    public static Tempo TempoOf(Song song) =>
        song.Bars[0].Tempos.Count > 0 && song.Bars[0].Tempos[0].At.IsZero ? song.Bars[0].Tempos[0].Tempo : Tempo.Default;

    private static void WritePart(Part part, Neck song, ValueList<GuitarString> strings, StringBuilder text)
    {
        text.Append(CultureInfo.InvariantCulture, $"part {part.Name} {SheetWords.Quoted(part.Title)}");
        if (part.Sound is { } sound && SheetWords.OneLine(sound) is { Length: > 0 } word) text.Append("  sound ").Append(word);
        text.Append('\n');
        if (part.Neck.Tuning != song.Tuning) text.Append(CultureInfo.InvariantCulture, $"  tuning {part.Neck.Tuning}\n");
        if (part.Neck.Capo != song.Capo) text.Append(CultureInfo.InvariantCulture, $"  capo {part.Neck.Capo}\n");
        if (part.Neck.FretCount != song.FretCount) text.Append(CultureInfo.InvariantCulture, $"  frets {part.Neck.FretCount}\n");
        if (part.Neck.ScaleLength != song.ScaleLength || part.Neck.LowScaleLength != song.LowScaleLength) text.Append(CultureInfo.InvariantCulture, $"  scale-length {Length(part.Neck)}\n");
        if (StringsOf(part) is { Count: > 0 } own && own != strings) text.Append(CultureInfo.InvariantCulture, $"  gauges {Gauges(own)}\n");
        text.Append('\n');
    }

    // A song moved to another number of strings has lost its set.
    private static ValueList<GuitarString> StringsOf(Part part) => part.Strings.Count == part.Neck.StringCount ? part.Strings : [];

    // A plain string thicker than usual says so.
    private static string Gauges(ValueList<GuitarString> strings) => string.Join(
        ' ', strings.Reverse().Select(s => s.ToString() is var text && GaugeText.Read(text).String == s ? text : text + "p"));

    private static string Length(Neck neck) => neck.LowScaleLength is { } low ? $"{Length(neck.ScaleLength)} - {Length(low)}" : Length(neck.ScaleLength);

    private static string Length(double millimetres)
    {
        var inches = Math.Round(millimetres / 25.4, 3);
        return inches * 25.4 == millimetres
            ? string.Create(CultureInfo.InvariantCulture, $"{inches} in")
            : string.Create(CultureInfo.InvariantCulture, $"{millimetres:R} mm");
    }
}
