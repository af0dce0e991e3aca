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

/// <summary>Binds road maps: the rules of free stretches.</summary>
internal sealed class RoadMapBinder(BindContext context, ImmutableArray<DeclaredPart> parts, IReadOnlyCollection<string> riffs)
{
    public static void Bind(SheetSyntax sheet, BindContext context, ImmutableArray<DeclaredPart> parts, IReadOnlyCollection<string> riffs)
    {
        var binder = new RoadMapBinder(context, parts, riffs);
        foreach (var map in sheet.Blocks.OfType<RoadMapSyntax>())
        {
            if (map.Name.IsMissing) continue;
            if (context.RoadMaps.ContainsKey(map.Name.Text)) context.Problems.Add(NameProblems.DeclaredTwice(map.Name, "road map"));
            else context.RoadMaps[map.Name.Text] = binder.Bind(map);
        }
    }

    private RoadMap Bind(RoadMapSyntax map)
    {
        var bound = new RoadMap { Name = map.Name.Text };
        foreach (var rule in map.Rules)
        {
            var words = SheetWord.From(rule.Values);
            bound = rule.Word.Text switch
            {
                "scale" => Scale(bound, words, rule),
                "strings" => Strings(bound, words, rule),
                "from" => Frets(bound, words, rule),
                "density" => Density(bound, words, rule),
                "aim" => AimAt(bound, words, rule),
                "may" => MayUse(bound, words, rule),
                "avoid" => Avoid(bound, words, rule),
                _ => bound,
            };
        }
        return bound;
    }

    // scale A dorian on strings 1-4
    private RoadMap Scale(RoadMap map, ImmutableArray<SheetWord> words, SettingSyntax rule)
    {
        var on = IndexOf(words, "on");
        if (on >= 0) map = Strings(map, words[(on + 1)..], rule);
        var named = on >= 0 ? words[..on] : words;
        if (named.Length < 2 || !NoteName.TryParse(named[0].Text, out var tonic))
        {
            context.Problems.Add(LessonProblems.NoScale(rule.Span));
            return map;
        }
        var name = SheetWord.Join(named.Skip(1));
        if (!ScaleTable.TryFind(name, out _))
        {
            var span = TextSpan.FromBounds(named[1].Span.Start, named[^1].Span.End);
            context.Problems.Add(LessonProblems.UnknownScale(span, name, ScaleTable.All.SelectMany(s => s.OtherNames.Prepend(s.Name))));
        }
        return map with { Scale = (tonic, name) };
    }

    // on strings 1-4, strings 2-5, string 3
    private RoadMap Strings(RoadMap map, ImmutableArray<SheetWord> words, SettingSyntax rule)
    {
        var numbers = words.FirstOrDefault(w => w.Text.Any(char.IsAsciiDigit)).Text?.Split('-').Select(n => Numerals.Of(n) ?? 0).ToArray() ?? [];
        var most = parts.Max(p => p.Neck.StringCount);
        if (numbers.Length is 1 or 2 && numbers.All(n => n >= 1 && n <= most))
        {
            return map with { Strings = (new StringNumber(numbers.Min()), new StringNumber(numbers.Max())) };
        }
        context.Problems.Add(LessonProblems.NoStrings(rule.Span, most));
        return map;
    }

    // from fret 14 to fret 4
    private RoadMap Frets(RoadMap map, ImmutableArray<SheetWord> words, SettingSyntax rule)
    {
        var frets = words.Select(w => Numerals.Of(w.Text)).OfType<int>().ToArray();
        var most = parts.Max(p => p.Neck.FretCount);
        if (frets.Length == 2 && frets.All(f => f <= most)) return map with { FromFret = new Fret(frets[0]), ToFret = new Fret(frets[1]) };
        context.Problems.Add(LessonProblems.NoFretRange(rule.Span, most));
        return map;
    }

    // density E to S
    private RoadMap Density(RoadMap map, ImmutableArray<SheetWord> words, SettingSyntax rule)
    {
        var values = words.Where(w => !w.Is("to")).Select(w => w.Text.Length == 1 ? TimeCell.ReadBase(w.Text[0]) : null).ToArray();
        if (values is [{ } first] || values is [{ } _, { } _])
        {
            var sorted = values.Select(v => v!.Value).Order().ToArray();
            return map with { Density = (sorted[0], sorted[^1]) };
        }
        context.Problems.Add(LessonProblems.NoDensity(rule.Span));
        return map;
    }

    // aim E by a half-step bend of D# in bar 6
    private RoadMap AimAt(RoadMap map, ImmutableArray<SheetWord> words, SettingSyntax rule)
    {
        if (words.Length == 0 || !NoteName.TryParse(words[0].Text, out var target))
        {
            context.Problems.Add(LessonProblems.NoAim(rule.Span));
            return map;
        }
        var rest = words[1..];
        int? bar = null;
        if (rest.Length >= 3 && rest[^3].Is("in") && rest[^2].Is("bar"))
        {
            bar = Numerals.Of(rest[^1].Text);
            if (bar is null or < 1 or > 9999) context.Problems.Add(LessonProblems.NoAim(rule.Span));
            rest = rest[..^3];
        }
        var how = rest.Length > 0 ? SheetWord.Join(rest) : null;
        return map with { Aims = map.Aims.Append(new Aim(target, bar, how)).ToValueList() };
    }

    // may use furnace.lick, ember-run
    private RoadMap MayUse(RoadMap map, ImmutableArray<SheetWord> words, SettingSyntax rule)
    {
        var named = words.Where(w => w.Text != "," && !w.Is("use")).ToArray();
        if (named.Length == 0) context.Problems.Add(LessonProblems.NoRiffsToUse(rule.Span));
        foreach (var name in named)
        {
            if (riffs.Contains(name.Text)) map = map with { MayUse = map.MayUse.Append(name.Text).ToValueList() };
            else context.Problems.Add(NameProblems.UnknownRiff(name.Span, name.Text, riffs));
        }
        return map;
    }

    // avoid F, Bb
    private RoadMap Avoid(RoadMap map, ImmutableArray<SheetWord> words, SettingSyntax rule)
    {
        var any = false;
        foreach (var word in words.Where(w => w.Text != ","))
        {
            if (NoteName.TryParse(word.Text, out var note)) map = map with { Avoid = map.Avoid.Append(note).ToValueList() };
            else context.Problems.Add(LessonProblems.NoNote(word.Span, word.Text));
            any = true;
        }
        if (!any) context.Problems.Add(LessonProblems.NoNote(rule.Span, ""));
        return map;
    }

    private static int IndexOf(ImmutableArray<SheetWord> words, string word)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if (words[i].Is(word)) return i;
        }
        return -1;
    }
}
