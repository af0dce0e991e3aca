using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Binds riffs, each on the neck it was written for and in its own metre.</summary>
internal sealed class RiffBinder(BindContext context, SongSettings song, RiffTable table)
{
    public BoundRiff Bind(RiffSyntax riff, Neck neck)
    {
        var meter = song.Meter;
        Key? key = null;
        foreach (var setting in riff.Settings)
        {
            var words = SheetWord.From(setting.Values);
            if (setting.Word.Text == "meter") meter = ChangeReader.Meter(words, setting.Span, context.Problems) ?? meter;
            else if (setting.Word.Text == "key") key = ChangeReader.Key(words, setting.Span, context.Problems);
        }
        var made = riff.Variation is { } variation ? Vary(riff, variation, neck, key) : Play(riff, neck, meter, key);
        var bars = new Dictionary<DraftBar, int>(ReferenceEqualityComparer.Instance);
        foreach (var bar in made.Flow.Bars)
        {
            // Only this riff's own bars: those it plays from other riffs were checked there.
            if (bar.Bar.Meter is not { } barMeter || !bars.TryAdd(bar.Bar, bar.Written)) continue;
            BarCheck.Check(bar.Bar, barMeter, $"Bar {bar.Written} of riff {riff.Name.Text}", context.Problems);
        }
        return made;
    }

    private BoundRiff Play(RiffSyntax riff, Neck neck, Meter meter, Key? key)
    {
        var binder = new MusicBinder(context, neck, meter, EntryState.Unset);
        var flow = binder.Bind(riff.Music);
        return new BoundRiff(riff, null, neck, key, flow, [.. binder.Entries], binder.IsIncomplete);
    }

    private BoundRiff Vary(RiffSyntax riff, VariationSyntax variation, Neck neck, Key? key)
    {
        var name = variation.BaseName.Text;
        if (!variation.BaseName.IsMissing && !table.Has(name)) context.Problems.Add(NameProblems.UnknownRiff(variation.BaseName, table.Names));
        if (table.IsRefused(variation) || table.Find(name) is not { } baseRiff)
        {
            return new BoundRiff(riff, null, neck, key, new Flow(), [], true);
        }
        var binder = new VariationBinder(context, baseRiff, song.Meter);
        var (flow, entries) = binder.Bind(variation);
        return new BoundRiff(riff, name, baseRiff.Neck, key ?? baseRiff.Key, flow, entries, binder.IsIncomplete);
    }
}
