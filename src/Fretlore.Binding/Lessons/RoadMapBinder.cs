using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lessons;

/// <summary>Binds road maps: what is fixed in a solo, and the rules of what is free.</summary>
internal sealed class RoadMapBinder(BindContext context, RuleReader reader)
{
    public static void Bind(SheetSyntax sheet, BindContext context, ImmutableArray<DeclaredPart> parts, IReadOnlyCollection<string> riffs)
    {
        var binder = new RoadMapBinder(context, new RuleReader(context.Problems, parts, riffs));
        foreach (var map in sheet.Blocks.OfType<RoadMapSyntax>())
        {
            if (map.Name.IsMissing) continue;
            if (context.RoadMaps.ContainsKey(map.Name.Text)) context.Problems.Add(NameProblems.DeclaredTwice(map.Name, "road map"));
            else context.RoadMaps[map.Name.Text] = binder.Bind(map);
        }
    }

    private BoundRoadMap Bind(RoadMapSyntax map)
    {
        var rules = new List<(RoadMapRule Rule, TextSpan Span)>();
        foreach (var line in map.Rules)
        {
            foreach (var rule in reader.Read(line))
            {
                if (rule is not (FixedRule or LickRule or AimRule or AvoidRule) && rules.Exists(r => r.Rule.GetType() == rule.GetType() && r.Rule.Bars == rule.Bars))
                {
                    context.Problems.Add(RoadMapProblems.RuleSaidTwice(line.Word.Span, line.Word.Text));
                }
                rules.Add((rule, line.Span));
            }
        }
        return new BoundRoadMap(new RoadMap { Name = map.Name.Text, Rules = rules.Select(r => r.Rule).ToValueList() }, [.. rules.Select(r => r.Span)]);
    }
}

/// <summary>A road map with the places in the sheet of its rules.</summary>
internal sealed record BoundRoadMap(RoadMap Map, ImmutableArray<TextSpan> Spans);
