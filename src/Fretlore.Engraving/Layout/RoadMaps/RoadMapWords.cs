using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>A road map in the words printed above its bars.</summary>
internal static partial class RoadMapWords
{
    /// <summary>All rules but the fixed phrases, which are printed as they are, and the aims that stand in their bars.</summary>
    public static string Rules(RoadMap map)
    {
        var rules = map.Rules.Where(r => r is not FixedRule && r is not AimRule { Bars: not null }).Select(Of).ToList();
        return $"Free ({map.Name}): " + (rules.Count == 0 ? "as you like" : string.Join("; ", rules)) + ".";
    }

    public static string GoesOn(RoadMap map) => $"Free ({map.Name}) goes on";

    public static string AimAt(AimRule aim) => "Aim for " + MixedText.SignsOf(aim.Target.ToString()) + On(aim.String) + Beat(aim.Beat) + How(aim.How);

    private static string Of(RoadMapRule rule)
    {
        var words = rule switch
        {
            ScaleRule scale => MixedText.SignsOf(scale.Tonic.ToString()) + " " + scale.Name,
            RolesRule roles => string.Join(", ", roles.Roles.Select(r => r.ToString().ToLowerInvariant())) + " of the chord on strong beats",
            StringsRule strings => strings.Highest == strings.Lowest ? $"string {strings.Highest}" : $"strings {strings.Highest}\u2013{strings.Lowest}",
            FretsRule { Moves: true } way => string.Create(CultureInfo.InvariantCulture, $"fret {way.From.Number} to fret {way.To.Number}"),
            FretsRule place => place.From == place.To ? $"fret {place.From}" : $"frets {place.From}\u2013{place.To}",
            ContourRule contour => contour.Shape switch
            {
                Contour.Rising or Contour.Falling or Contour.Level => contour.Shape.ToString().ToLowerInvariant(),
                Contour.Arch => "up and down again",
                Contour.Valley => "down and up again",
                _ => "up and down in turn",
            },
            DensityRule density => density.Slowest == density.Fastest ? "mostly " + Named(density.Slowest) : $"{Named(density.Slowest)} to {Named(density.Fastest)}",
            RhythmRule rhythm => "rhythm " + string.Join(", ", rhythm.Cells),
            LickRule licks => "may use " + string.Join(", ", licks.Riffs),
            AimRule aim => AimAt(aim),
            AvoidRule avoid => "keep away from " + string.Join(", ", avoid.What.Select(w => w is Avoided.Note note ? MixedText.SignsOf(note.Name.ToString()) : w.ToString())),
            EndRule end => "end on " + MixedText.SignsOf(end.Target.ToString()) + On(end.String) + How(end.How) + (end.IsHeld ? ", held" : ""),
            _ => rule.ToString(),
        };
        return rule.Bars is { } bars ? $"{words} {bars}" : words;
    }

    private static string On(Guitar.StringNumber? number) => number is { } on ? $" on string {on}" : "";

    private static string Beat(int? beat) => beat is { } number ? string.Create(CultureInfo.InvariantCulture, $" on beat {number}") : "";

    private static string How(Approach? how) => how is null ? "" : ", " + NoteNames().Replace(how.ToString(), m => MixedText.SignsOf(m.Value));

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
