using System.Collections.Immutable;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lessons;

/// <summary>Reads the lines of a road map as rules; a line that is none is reported and makes none.</summary>
internal sealed class RuleReader(DiagnosticBag problems, ImmutableArray<DeclaredPart> parts, IReadOnlyCollection<string> riffs)
{
    private readonly int strings = parts.Max(p => p.Neck.StringCount);
    private readonly int frets = parts.Max(p => p.Neck.FretCount);

    /// <summary>One rule a line, but for a scale with its strings, which is two.</summary>
    public IEnumerable<RoadMapRule> Read(SettingSyntax line)
    {
        var rule = RuleClauses.Read(line, strings, problems);
        if (rule.IsBroken) return [];
        return line.Word.Text switch
        {
            "fixed" => One(Fixed(rule)),
            "scale" => Scale(rule),
            "roles" => One(Roles(rule)),
            "strings" => One(Strings(rule)),
            "from" => One(Frets(rule, moves: true)),
            "frets" => One(Frets(rule, moves: false)),
            "contour" => One(ContourOf(rule)),
            "density" => One(Density(rule)),
            "rhythm" => One(Rhythm(rule)),
            "may" => One(MayUse(rule)),
            "aim" => One(Aim(rule)),
            "avoid" => One(Avoid(rule)),
            "end" => One(End(rule)),
            _ => [],
        };
    }

    private static RoadMapRule[] One(RoadMapRule? rule) => rule is null ? [] : [rule];

    private FixedRule? Fixed(RuleClauses rule)
    {
        if (rule.Words.Length != 1 || rule.Bars is null)
        {
            problems.Add(RoadMapProblems.NoFixedPhrase(rule.Span));
            return null;
        }
        return IsRiff(rule.Words[0]) ? new FixedRule(rule.Words[0].Text, rule.Bars) : null;
    }

    private List<RoadMapRule> Scale(RuleClauses rule)
    {
        var made = new List<RoadMapRule>();
        if (rule.Words.Length < 2 || !NoteName.TryParse(rule.Words[0].Text, out var tonic)) problems.Add(RoadMapProblems.NoScale(rule.Span));
        else
        {
            var name = SheetWord.Join(rule.Words.Skip(1));
            if (ScaleTable.TryFind(name, out _)) made.Add(new ScaleRule(tonic, name, rule.Bars));
            else
            {
                var span = RuleClauses.SpanOf(rule.Words[1..]);
                problems.Add(RoadMapProblems.UnknownScale(span, name, ScaleTable.All.SelectMany(s => s.OtherNames.Prepend(s.Name))));
            }
        }
        if (rule.Strings is { } on) made.Add(new StringsRule(on.Highest, on.Lowest, rule.Bars));
        return made;
    }

    private StringsRule? Strings(RuleClauses rule)
    {
        if (rule.Words is [var word] && RuleClauses.StringsOf(word.Text, strings) is { } on) return new StringsRule(on.Highest, on.Lowest, rule.Bars);
        problems.Add(RoadMapProblems.NoStrings(rule.Span, strings));
        return null;
    }

    private RolesRule? Roles(RuleClauses rule)
    {
        var roles = new List<ToneRole>();
        foreach (var word in rule.Words.Where(w => w.Text != ","))
        {
            if (Enum.TryParse<ToneRole>(word.Text, ignoreCase: true, out var role) && !char.IsAsciiDigit(word.Text[0])) roles.Add(role);
            else problems.Add(RoadMapProblems.NoRoles(word.Span, word.Text));
        }
        if (rule.Words.IsEmpty) problems.Add(RoadMapProblems.NoRoles(rule.Span, ""));
        return roles.Count == 0 ? null : new RolesRule(roles.Distinct().ToValueList(), rule.Bars);
    }

    // "from fret 14 to fret 4", "frets 10-14"
    private FretsRule? Frets(RuleClauses rule, bool moves)
    {
        var numbers = rule.Words.SelectMany(w => w.Text.Split('-')).Select(Numerals.Of).OfType<int>().ToArray();
        if (numbers.Length == (moves ? 2 : Math.Clamp(numbers.Length, 1, 2)) && numbers.All(f => f <= frets))
        {
            return moves
                ? new FretsRule(new Fret(numbers[0]), new Fret(numbers[1]), true, rule.Bars)
                : new FretsRule(new Fret(numbers.Min()), new Fret(numbers.Max()), false, rule.Bars);
        }
        problems.Add(RoadMapProblems.NoFretRange(rule.Span, frets));
        return null;
    }

    private ContourRule? ContourOf(RuleClauses rule)
    {
        var word = SheetWord.Join(rule.Words);
        if (word.Length > 0 && char.IsAsciiLetter(word[0]) && Enum.TryParse<Contour>(word, ignoreCase: true, out var contour)) return new ContourRule(contour, rule.Bars);
        problems.Add(RoadMapProblems.NoContour(rule.Span, word, Enum.GetNames<Contour>().Select(n => n.ToLowerInvariant())));
        return null;
    }

    // "density E to S"
    private DensityRule? Density(RuleClauses rule)
    {
        var values = rule.Words.Where(w => !w.Is("to")).Select(w => w.Text.Length == 1 ? TimeCell.ReadBase(w.Text[0]) : null).ToArray();
        if (values is [{ } _] || values is [{ } _, { } _])
        {
            var sorted = values.Select(v => v!.Value).Order().ToArray();
            return new DensityRule(sorted[0], sorted[^1], rule.Bars);
        }
        problems.Add(RoadMapProblems.NoDensity(rule.Span));
        return null;
    }

    private RhythmRule? Rhythm(RuleClauses rule)
    {
        var cells = new List<RhythmCell>();
        foreach (var item in RuleClauses.Items(rule.Words))
        {
            var text = string.Concat(item.Select(w => w.Text));
            if (RhythmCellText.Read(text) is { } cell) cells.Add(cell);
            else problems.Add(RoadMapProblems.NoCell(RuleClauses.SpanOf(item), text));
        }
        if (rule.Words.IsEmpty) problems.Add(RoadMapProblems.NoCell(rule.Span, ""));
        return cells.Count == 0 ? null : new RhythmRule(cells.ToValueList(), rule.Bars);
    }

    // "may use furnace.lick, ember-run in bars 3-4"
    private LickRule? MayUse(RuleClauses rule)
    {
        var named = rule.Words.Where(w => w.Text != "," && !w.Is("use")).ToArray();
        if (named.Length == 0) problems.Add(RoadMapProblems.NoRiffsToUse(rule.Span));
        var known = named.Where(IsRiff).Select(w => w.Text).ToValueList();
        return known.Count == 0 ? null : new LickRule(known, rule.Bars);
    }

    private bool IsRiff(SheetWord name)
    {
        if (riffs.Contains(name.Text)) return true;
        problems.Add(NameProblems.UnknownRiff(name.Span, name.Text, riffs));
        return false;
    }

    // "aim E by a half-step bend of D# on beat 3 in bar 6"
    private AimRule? Aim(RuleClauses rule)
    {
        if (rule.Words.IsEmpty || !NoteName.TryParse(rule.Words[0].Text, out var target))
        {
            problems.Add(RoadMapProblems.NoAim(rule.Span));
            return null;
        }
        if (!Way(rule.Words[1..], target, out var how)) return null;
        return new AimRule(target, how, rule.Beat, rule.Strings?.Highest, rule.Bars);
    }

    private bool Way(ImmutableArray<SheetWord> words, NoteName target, out Approach? how)
    {
        how = words.IsEmpty ? null : ApproachReader.Read(words, target, problems);
        return words.IsEmpty || how is not null;
    }

    // "avoid F, Bb, open strings, leaps over a fifth"
    private AvoidRule? Avoid(RuleClauses rule)
    {
        var what = new List<Avoided>();
        foreach (var item in RuleClauses.Items(rule.Words))
        {
            var text = SheetWord.Join(item);
            if (AvoidedOf(text) is { } avoided) what.Add(avoided);
            else problems.Add(RoadMapProblems.NothingToAvoid(RuleClauses.SpanOf(item), text));
        }
        if (rule.Words.IsEmpty) problems.Add(RoadMapProblems.NothingToAvoid(rule.Span, ""));
        return what.Count == 0 ? null : new AvoidRule(what.ToValueList(), rule.Bars);
    }

    private static Avoided? AvoidedOf(string text)
    {
        if (NoteName.TryParse(text, out var note)) return new Avoided.Note(note);
        if (text.StartsWith("leaps over ", StringComparison.Ordinal))
        {
            var size = Avoided.Leaps.Words.Items.IndexOf(text[(text.LastIndexOf(' ') + 1)..]);
            return size < 0 ? null : new Avoided.Leaps(size + 2);
        }
        return text switch
        {
            "open strings" => new Avoided.OpenStrings(),
            "bends" => new Avoided.Bends(),
            "slides" => new Avoided.Slides(),
            "repeats" => new Avoided.Repeats(),
            _ => null,
        };
    }

    // "end D on string 3 by a slide from below, held"
    private EndRule? End(RuleClauses rule)
    {
        var words = rule.Words.Where(w => w.Text != ",").SkipWhile(w => w.Is("on")).ToImmutableArray();
        var isHeld = words.Length > 0 && words[^1].Is("held");
        if (isHeld) words = words[..^1];
        if (words.IsEmpty || rule.Bars is not null || rule.Beat is not null || !NoteName.TryParse(words[0].Text, out var target))
        {
            problems.Add(RoadMapProblems.NoEnd(rule.Span));
            return null;
        }
        return Way(words[1..], target, out var how) ? new EndRule(target, how, rule.Strings?.Highest, isHeld) : null;
    }
}
