using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>Binds the sections of a song, one after another.</summary>
internal sealed class SectionBinder(BindContext context, SongDraft draft, Timeline timeline, SectionNames names)
{
    private readonly Neck[] necks = [.. draft.Parts.Select(p => p.Neck)];

    public void Bind(SectionSyntax section)
    {
        var name = SectionNames.NameOf(section);
        var lines = new List<SectionLine>();
        foreach (var (part, line) in names.LinesOf(section))
        {
            var binder = new MusicBinder(context, necks[part], null, EntryState.Unset);
            var flow = binder.Bind(line.Music);
            new FixedPhrases(context).Fill(flow);
            if (binder.Neck != necks[part]) necks[part] = binder.Neck;
            var span = line.PartName.IsMissing ? line.Span : line.PartName.Span;
            lines.Add(new SectionLine(part, flow, span, binder.IsIncomplete));
        }
        var first = draft.Columns.Count;
        var after = necks.ToArray();
        new SectionLayout(draft, timeline, context.Problems).Lay(name, lines, necks, SettingsOf(section));
        after.CopyTo(necks, 0);
        if (draft.Columns.Count == first && !lines.Any(l => l.IsIncomplete)) context.Problems.Add(FormProblems.EmptySection(section.Span, name));
    }

    private ImmutableArray<PlacedChange> SettingsOf(SectionSyntax section)
    {
        var changes = ImmutableArray.CreateBuilder<PlacedChange>();
        foreach (var setting in section.Settings)
        {
            var words = SheetWord.From(setting.Values);
            Change? change = setting.Word.Text switch
            {
                "meter" => ChangeReader.Meter(words, setting.Span, context.Problems) is { } meter ? new MeterChange(meter) : null,
                "tempo" => ChangeReader.Tempo(words, setting.Span, context.Problems) is { } tempo ? new TempoChange(tempo) : null,
                "key" => ChangeReader.Key(words, setting.Span, context.Problems) is { } key ? new KeyChange(key) : null,
                "feel" => ChangeReader.Feel(words, setting.Span, context.Problems) is { } feel ? new FeelChange(feel) : null,
                _ => null,
            };
            if (change is not null) changes.Add(new PlacedChange(default, change, setting.Span));
        }
        return changes.DrainToImmutable();
    }
}
