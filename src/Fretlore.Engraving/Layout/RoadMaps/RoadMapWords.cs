using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>A road map in the words printed above its bars.</summary>
internal static partial class RoadMapWords
{
    public static string Rules(RoadMap map)
    {
        var rules = new List<string>();
        if (map.Scale is { } scale) rules.Add(MixedText.SignsOf(scale.Tonic.ToString()) + " " + scale.Name);
        if (map.Strings is { } strings)
        {
            rules.Add(strings.Highest == strings.Lowest ? $"string {strings.Highest}" : $"strings {strings.Highest}\u2013{strings.Lowest}");
        }
        if (Frets(map) is { } frets) rules.Add(frets);
        if (map.Density is { } density)
        {
            rules.Add(density.Slowest == density.Fastest ? "mostly " + Named(density.Slowest) : $"{Named(density.Slowest)} to {Named(density.Fastest)}");
        }
        foreach (var aim in map.Aims)
        {
            if (aim.Bar is null) rules.Add(AimAt(aim));
        }
        if (map.MayUse.Count > 0) rules.Add("may use " + string.Join(", ", map.MayUse));
        if (map.Avoid.Count > 0) rules.Add("keep away from " + string.Join(", ", map.Avoid.Select(n => MixedText.SignsOf(n.ToString()))));
        return $"Free ({map.Name}): " + (rules.Count == 0 ? "as you like" : string.Join("; ", rules)) + ".";
    }

    public static string GoesOn(RoadMap map) => $"Free ({map.Name}) goes on";

    public static string AimAt(Aim aim) => "Aim for " + MixedText.SignsOf(aim.Target.ToString())
        + (aim.How is { } how ? ", " + NoteNames().Replace(how, m => MixedText.SignsOf(m.Value)) : "");

    private static string? Frets(RoadMap map) => (map.FromFret, map.ToFret) switch
    {
        ({ } from, { } to) => string.Create(CultureInfo.InvariantCulture, $"fret {from.Number} to fret {to.Number}"),
        ({ } from, null) => string.Create(CultureInfo.InvariantCulture, $"from fret {from.Number}"),
        (null, { } to) => string.Create(CultureInfo.InvariantCulture, $"to fret {to.Number}"),
        _ => null,
    };

    private static string Named(ValueBase value) => value switch
    {
        ValueBase.Whole => "whole notes",
        ValueBase.Half => "halves",
        ValueBase.Quarter => "quarters",
        ValueBase.Eighth => "eighths",
        ValueBase.Sixteenth => "16ths",
        ValueBase.ThirtySecond => "32nds",
        _ => "64ths",
    };

    [GeneratedRegex(@"\b[A-G](#+|b+)(?![A-Za-z])")]
    private static partial Regex NoteNames();
}
