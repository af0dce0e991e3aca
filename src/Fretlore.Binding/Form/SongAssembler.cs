using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Riffs;
using Fretlore.Binding.Settings;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>Makes the song from its draft: holds tied, repeats written, notes numbered.</summary>
internal sealed class SongAssembler(BindContext context, SongSettings settings)
{
    private readonly NoteNumbering notes = new();

    /// <summary>Off only to compare: the song must sound the same with its repeats written out.</summary>
    public bool WritesRepeats { get; init; } = true;

    public (Song Song, ImmutableArray<TextSpan> Spans, IReadOnlyDictionary<NoteId, TextSpan> Symbols) Assemble(SongDraft draft, IEnumerable<BoundRiff> riffs, LessonPlan? lesson)
    {
        foreach (var part in draft.Bars) HoldResolver.Resolve(part, mayOpenHeld: false, context.Problems);
        var plan = RepeatFolding.Fold(draft.Columns, draft.Bars, WritesRepeats ? draft.Repeats : []);
        var parts = draft.Parts.Select((p, i) => new Part
        {
            Name = p.Name,
            Title = p.Title,
            Neck = p.Neck,
            Strings = p.Strings,
            Sound = p.Sound,
            Bars = BarWriter.Write(draft.Bars[i], plan, notes),
        }).ToValueList();
        var song = new Song
        {
            Info = settings.Info,
            Bars = BarWriter.Write(draft.Columns, plan),
            Parts = parts,
            Sections = draft.Sections.Where(s => s.End > s.First).Select(s => Section(s, plan)).ToValueList(),
            RiffUses = draft.Riffs.Select(r => (r.Part, r.Name, Over: Over(r, plan))).Distinct()
                .Select(r => new RiffUse(r.Name, r.Part, r.Over.First, r.Over.Count)).ToValueList(),
            RoadMapUses = draft.RoadMaps.Select(r => (r.Part, r.Name, Over: Over(r, plan))).Distinct()
                .Select(r => new RoadMapUse(r.Name, r.Part, r.Over.First, r.Over.Count)).ToValueList(),
            Riffs = riffs.Select(Write).ToValueList(),
            Shapes = context.Shapes.Values.ToValueList(),
            RoadMaps = context.RoadMaps.Values.Select(m => m.Map).ToValueList(),
            Lesson = lesson,
            NoteCount = notes.Count,
        };
        return (song with { NoteCount = notes.Count }, notes.TakeSpans(), notes.Symbols);
    }

    private static Section Section((string Name, int First, int End) section, WrittenPlan plan)
    {
        var first = plan.WrittenOf[section.First];
        return new Section(section.Name, first, plan.WrittenOf.AsSpan(section.First..section.End).ToArray().Max() - first + 1);
    }

    private static (int First, int Count) Over(PartSpan span, WrittenPlan plan)
    {
        var (first, last) = (int.MaxValue, int.MinValue);
        foreach (var written in plan.WrittenOf.AsSpan(span.First..span.End)) (first, last) = (Math.Min(first, written), Math.Max(last, written));
        return (first, last - first + 1);
    }

    private Riff Write(BoundRiff riff)
    {
        var timeline = new Timeline(riff.Alone, context.Problems);
        var bars = riff.Flow.Bars.Select(b => b.Bar).ToList();
        HoldResolver.Resolve(bars, mayOpenHeld: true, context.Problems);
        var columns = bars.Select(b =>
        {
            var sources = b.Changes.Select(c => new Source(riff.Name, c)).ToList();
            return timeline.Next(sources, (riff.Name, b.Meter ?? riff.Alone.Meter, b.Span), b.IsPickup ? b.Length : null, b.EndLine);
        }).ToList();
        var plan = RepeatFolding.Fold(columns, [bars], WritesRepeats ? riff.Flow.Repeats : []);
        return new Riff
        {
            Name = riff.Name,
            VariationOf = riff.VariationOf,
            Neck = riff.Neck,
            Bars = BarWriter.Write(columns, plan),
            Content = BarWriter.Write(bars, plan, notes),
        };
    }
}
