using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Binds riffs, each on the neck it was written for and in its own metre.</summary>
internal sealed class RiffBinder(BindContext context, SongSettings song, RiffTable table)
{
    public BoundRiff Bind(RiffSyntax riff, Neck neck)
    {
        var made = riff.Variation is { } variation ? Vary(riff, variation, neck) : Play(riff, neck);
        var bars = new Dictionary<DraftBar, int>(ReferenceEqualityComparer.Instance);
        foreach (var bar in made.Flow.Bars)
        {
            // Only this riff's own bars: those it plays from other riffs were checked there.
            if (bar.Bar.Meter is not { } barMeter || !bars.TryAdd(bar.Bar, bar.Written)) continue;
            BarCheck.Check(bar.Bar, barMeter, $"Bar {bar.Written} of riff {riff.Name.Text}", context.Problems);
        }
        return made;
    }

    private BoundRiff Play(RiffSyntax riff, Neck neck)
    {
        var alone = Settings(riff, song);
        var binder = new MusicBinder(context, neck, alone.Meter, EntryState.Unset);
        var flow = binder.Bind(riff.Music);
        return new BoundRiff(riff, null, neck, alone, flow, [.. binder.Entries], binder.IsIncomplete);
    }

    private BoundRiff Vary(RiffSyntax riff, VariationSyntax variation, Neck neck)
    {
        var name = variation.BaseName.Text;
        if (!variation.BaseName.IsMissing && !table.Has(name)) context.Problems.Add(NameProblems.UnknownRiff(variation.BaseName, table.Names));
        if (table.IsRefused(variation) || table.Find(name) is not { } baseRiff)
        {
            return new BoundRiff(riff, null, neck, song, new Flow(), [], true);
        }
        var binder = new VariationBinder(context, baseRiff, baseRiff.Alone.Meter);
        var (flow, entries) = binder.Bind(variation);
        return new BoundRiff(riff, name, baseRiff.Neck, Settings(riff, baseRiff.Alone), flow, entries, binder.IsIncomplete);
    }

    private SongSettings Settings(RiffSyntax riff, SongSettings otherwise)
    {
        foreach (var setting in riff.Settings)
        {
            var (words, span) = (SheetWord.From(setting.Values), setting.Span);
            otherwise = setting.Word.Text switch
            {
                "meter" => otherwise with { Meter = ChangeReader.Meter(words, span, context.Problems) ?? otherwise.Meter },
                "key" => otherwise with { Key = ChangeReader.Key(words, span, context.Problems) ?? otherwise.Key },
                "tempo" => otherwise with { Tempo = ChangeReader.Tempo(words, span, context.Problems) ?? otherwise.Tempo },
                "feel" => otherwise with { Feel = ChangeReader.Feel(words, span, context.Problems) ?? otherwise.Feel },
                _ => otherwise,
            };
        }
        return otherwise;
    }
}
