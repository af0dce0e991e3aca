using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Binding.Lessons;

/// <summary>Reads how a note is reached: <c>by a half-step bend of G#</c>, <c>by a slide from below</c>, <c>from a half step below</c>.</summary>
internal static class ApproachReader
{
    /// <summary>Null, with a finding, when the words are no way to a note.</summary>
    public static Approach? Read(ImmutableArray<SheetWord> words, NoteName target, DiagnosticBag problems)
    {
        var span = RuleClauses.SpanOf(words);
        if (Read([.. words.Where(w => w.Text is not ("a" or "an")).Select(w => w.Text)]) is not { } approach)
        {
            problems.Add(RoadMapProblems.NoApproach(span, SheetWord.Join(words)));
            return null;
        }
        if (approach.From is { } from && !Leads(approach, from, target))
        {
            problems.Add(RoadMapProblems.ApproachMissesTarget(span, from.ToString(), target.ToString(), Way(approach)));
            return null;
        }
        return approach;
    }

    private static Approach? Read(ImmutableArray<string> words) => words switch
    {
        ["by", .. var way] => By(way),
        ["from", .. var way] => From(way),
        _ => null,
    };

    private static Approach? By(ImmutableArray<string> words) => words switch
    {
        ["half-step", "bend", .. var of] => Bend(1, of),
        ["half", "step", "bend", .. var of] => Bend(1, of),
        ["whole-step", "bend", .. var of] => Bend(2, of),
        ["whole", "step", "bend", .. var of] => Bend(2, of),
        ["bend", .. var of] => Bend(null, of),
        ["slide", .. var from] => Joined(ApproachKind.Slide, from, null),
        ["hammer-on", .. var from] => Joined(ApproachKind.HammerOn, from, Side.Below),
        ["pull-off", .. var from] => Joined(ApproachKind.PullOff, from, Side.Above),
        _ => null,
    };

    private static Approach? Bend(int? semitones, ImmutableArray<string> of) => of switch
    {
        [] => new Approach(ApproachKind.Bend, semitones),
        ["of", var note] when NoteName.TryParse(note, out var name) => new Approach(ApproachKind.Bend, semitones, name),
        _ => null,
    };

    private static Approach? Joined(ApproachKind kind, ImmutableArray<string> from, Side? only) => from switch
    {
        [] => new Approach(kind),
        ["from", "below"] when only != Side.Above => new Approach(kind, Side: only is null ? Side.Below : null),
        ["from", "above"] when only != Side.Below => new Approach(kind, Side: only is null ? Side.Above : null),
        ["from", var note] when NoteName.TryParse(note, out var name) => new Approach(kind, From: name),
        _ => null,
    };

    private static Approach? From(ImmutableArray<string> words) => words switch
    {
        ["half", "step", var side] => Step(1, side),
        ["half-step", var side] => Step(1, side),
        ["whole", "step", var side] => Step(2, side),
        ["whole-step", var side] => Step(2, side),
        ["step", var side] => Step(null, side),
        [var note] when NoteName.TryParse(note, out var name) => new Approach(ApproachKind.Step, From: name),
        _ => null,
    };

    private static Approach? Step(int? semitones, string side) => side switch
    {
        "below" => new Approach(ApproachKind.Step, semitones, Side: Side.Below),
        "above" => new Approach(ApproachKind.Step, semitones, Side: Side.Above),
        _ => null,
    };

    // Bends reach a tone and a half at most; a hammer-on or pull-off what a hand spans.
    private static bool Leads(Approach approach, NoteName from, NoteName target)
    {
        var up = NoteName.Wrap(target.PitchClass - from.PitchClass, 12);
        return approach.Kind switch
        {
            ApproachKind.Bend => approach.Semitones is { } size ? up == size : up is 1 or 2 or 3,
            ApproachKind.HammerOn => up is >= 1 and <= 7,
            ApproachKind.PullOff => NoteName.Wrap(-up, 12) is >= 1 and <= 7,
            _ => up != 0,
        };
    }

    private static string Way(Approach approach) => approach.Kind switch
    {
        ApproachKind.Bend => approach.Semitones switch { 1 => "a half step up", 2 => "a whole step up", _ => "a bend up" },
        ApproachKind.HammerOn => "a hammer-on up",
        ApproachKind.PullOff => "a pull-off down",
        _ => "a way from one note to another",
    };
}
