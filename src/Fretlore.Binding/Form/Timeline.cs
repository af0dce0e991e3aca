using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Settings;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>A change and the part that writes it; the section itself writes some.</summary>
internal readonly record struct Source(string Part, PlacedChange Change);

/// <summary>Metre, key, tempo and feel from bar to bar, as changes come.</summary>
internal sealed class Timeline(SongSettings song, DiagnosticBag problems)
{
    private bool isFirst = true;

    private Meter Meter { get; set; } = song.Meter;

    private Key? Key { get; set; } = song.Key;

    private Tempo Tempo { get; set; } = song.Tempo;

    private Feel Feel { get; set; } = song.Feel;

    /// <summary>Takes in the changes of one bar's parts and makes the bar.</summary>
    /// <param name="sources">The changes, the section's first.</param>
    /// <param name="riffMeter">The metre that a riff brings, with the part that plays it and where; it holds for this bar only.</param>
    /// <param name="pickup">The length of a pickup, or null.</param>
    /// <param name="endLine">The bar line written at its end.</param>
    public Column Next(IReadOnlyList<Source> sources, (string Part, Meter Meter, TextSpan Span)? riffMeter, Beats? pickup, BarLine endLine)
    {
        if (Agreed<MeterChange>(sources) is { } meterSource)
        {
            var meter = ((MeterChange)meterSource.Change.Change).Meter;
            if (riffMeter is { } riff && riff.Meter != meter)
            {
                problems.Add(FormProblems.MetersDisagree(meterSource.Change.Span, meterSource.Part, meter, riff.Part, riff.Meter));
            }
            Meter = meter;
        }
        if (Agreed<KeyChange>(sources) is { } key) Key = ((KeyChange)key.Change.Change).Key;
        var feel = Agreed<FeelChange>(sources);
        if (feel is { } feelSource) Feel = ((FeelChange)feelSource.Change.Change).Feel;
        var marks = Tempos(sources);
        if (isFirst && (marks.Count == 0 || !marks[0].At.IsZero)) marks.Insert(0, new TempoMark(Beats.Zero, Tempo));
        var start = marks.Count > 0 && marks[0].At.IsZero ? marks[0].Tempo : Tempo;
        if (marks.Count > 0) Tempo = marks[^1].Tempo;
        var here = riffMeter?.Meter ?? Meter;
        var column = new Column
        {
            Meter = here,
            Key = Key,
            Length = pickup ?? here.Length,
            IsPickup = pickup is not null,
            Tempos = marks.ToValueList(),
            StartTempo = start,
            Feel = Feel,
            ChangesFeel = feel is not null || (isFirst && Feel != Feel.Straight),
            EndLine = endLine,
            IsSegno = Agreed<SegnoMark>(sources) is not null,
            IsCoda = Agreed<CodaMark>(sources) is not null,
            Jump = Agreed<JumpMark>(sources) is { } jump ? ((JumpMark)jump.Change.Change).Jump : Jump.None,
        };
        isFirst = false;
        return column;
    }

    private Source? Agreed<T>(IReadOnlyList<Source> sources) where T : Change
    {
        Source? first = null;
        foreach (var source in sources)
        {
            if (source.Change.Change is not T) continue;
            if (first is null) first = source;
            else if (!first.Value.Change.Change.Equals(source.Change.Change))
            {
                problems.Add(FormProblems.ChangesDisagree(source.Change.Span, first.Value.Part, source.Part));
            }
        }
        return first;
    }

    private List<TempoMark> Tempos(IReadOnlyList<Source> sources)
    {
        SortedDictionary<Beats, Source>? marks = null;
        foreach (var source in sources)
        {
            if (source.Change.Change is not TempoChange tempo || (marks ??= []).TryAdd(source.Change.At, source)) continue;
            if (marks[source.Change.At].Change.Change.Equals(tempo)) continue;
            problems.Add(FormProblems.ChangesDisagree(source.Change.Span, marks[source.Change.At].Part, source.Part));
        }
        return marks is null ? [] : [.. marks.Select(m => new TempoMark(m.Key, ((TempoChange)m.Value.Change.Change).Tempo))];
    }
}
