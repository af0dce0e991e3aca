using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>What a bar's rhythm must do besides keeping the rules.</summary>
/// <param name="Onsets">Times at which a note begins.</param>
/// <param name="Joined">Those of them that the note before must reach without a rest.</param>
/// <param name="RingsOut">True when the last note must last to the bar's end.</param>
internal sealed record RhythmNeeds(ImmutableArray<Beats> Onsets, ImmutableArray<Beats> Joined, bool RingsOut)
{
    public static RhythmNeeds None { get; } = new([], [], false);
}

/// <summary>The rhythms that a bar may have: cells one after another that fill it.</summary>
internal sealed class RhythmPool
{
    private readonly StretchBar bar;
    private readonly ImmutableArray<CellForm> forms;
    private readonly bool isFromRule;

    private RhythmPool(StretchBar bar, ImmutableArray<CellForm> forms, bool isFromRule) => (this.bar, this.forms, this.isFromRule) = (bar, forms, isFromRule);

    public ImmutableArray<CellForm> Forms => forms;

    /// <param name="bar">A free bar.</param>
    /// <param name="model">The weights.</param>
    /// <param name="habits">The song's own rhythms.</param>
    /// <param name="notesPerQuarter">How dense it should be; null for no matter.</param>
    public static RhythmPool Of(StretchBar bar, PhraseModel model, SongHabits habits, double? notesPerQuarter)
    {
        var fromRule = bar.Rhythm is not null;
        var cells = bar.Rhythm is { } rule ? rule.Cells.Select(c => (Cell: c, Bits: 0.0)) : Usual(model, habits);
        var forms = ImmutableArray.CreateBuilder<CellForm>();
        foreach (var (cell, bits) in cells)
        {
            if (cell.Length > bar.Length) continue;
            var density = notesPerQuarter is { } wanted ? model.OffDensity * Square(cell.Values.Count / cell.Length.ToDouble() - wanted) * cell.Length.ToDouble() : 0;
            foreach (var form in CellForm.Of(cell, bits + density, model.CutCell))
            {
                if (Keeps(form, bar.Density)) forms.Add(form);
            }
        }
        return new RhythmPool(bar, forms.ToImmutable(), fromRule);
    }

    private static double Square(double value) => value * value;

    /// <summary>The few cells that a phrase is mostly made of, by chance and weight.</summary>
    public ImmutableArray<RhythmCell> DrawMotif(Dice dice, int count)
    {
        var left = forms.Where(f => !f.LeavesRest).ToList();
        var motif = ImmutableArray.CreateBuilder<RhythmCell>(count);
        while (motif.Count < count && left.Count > 0)
        {
            var chosen = left[Math.Max(0, dice.ByWeight([.. left.Select(f => Bits.Weight(f.Bits))]))].Cell;
            motif.Add(chosen);
            left.RemoveAll(f => f.Cell == chosen);
        }
        return motif.ToImmutable();
    }

    /// <summary>A rhythm by chance and weight; null when none does what is needed.</summary>
    /// <param name="dice">Chance.</param>
    /// <param name="needs">What it must do.</param>
    /// <param name="motif">The cells it is mostly made of.</param>
    /// <param name="others">What other cells cost more, in bits.</param>
    public ImmutableArray<(Beats At, CellForm Form)>? Draw(Dice dice, RhythmNeeds needs, ImmutableArray<RhythmCell> motif, double others)
    {
        double Cost(CellForm form) => form.Bits + (motif.Contains(form.Cell) ? 0 : others);
        var weights = new Dictionary<Beats, double>();
        var made = ImmutableArray.CreateBuilder<(Beats, CellForm)>();
        var options = new double[forms.Length];
        for (var at = Beats.Zero; at < bar.Length;)
        {
            for (var i = 0; i < forms.Length; i++) options[i] = Fits(at, forms[i], needs) ? Bits.Weight(Cost(forms[i])) * WeightFrom(at + forms[i].Length, needs, Cost, weights) : 0;
            var chosen = dice.ByWeight(options);
            if (chosen < 0) return null;
            made.Add((at, forms[chosen]));
            at += forms[chosen].Length;
        }
        return made.ToImmutable();
    }

    /// <summary>True when a rhythm made for another bar does here too.</summary>
    public bool Takes(ImmutableArray<(Beats At, CellForm Form)> rhythm, RhythmNeeds needs)
    {
        foreach (var (at, form) in rhythm)
        {
            if (!forms.Any(f => f.Length == form.Length && f.LeavesRest == form.LeavesRest && f.Notes.SequenceEqual(form.Notes)) || !Fits(at, form, needs)) return false;
        }
        return rhythm[^1].At + rhythm[^1].Form.Length == bar.Length;
    }

    private double WeightFrom(Beats at, RhythmNeeds needs, Func<CellForm, double> cost, Dictionary<Beats, double> weights)
    {
        if (at == bar.Length) return 1;
        if (weights.TryGetValue(at, out var known)) return known;
        var total = 0.0;
        foreach (var form in forms)
        {
            if (Fits(at, form, needs)) total += Bits.Weight(cost(form)) * WeightFrom(at + form.Length, needs, cost, weights);
        }
        return weights[at] = total;
    }

    public bool Fits(Beats at, CellForm form, RhythmNeeds needs)
    {
        var end = at + form.Length;
        if (end > bar.Length || (!isFromRule && !IsOnItsBeat(at, end))) return false;
        foreach (var onset in needs.Onsets)
        {
            if (onset < at || onset >= end) continue;
            var has = false;
            foreach (var note in form.Notes) has |= at + note.At == onset;
            if (!has) return false;
        }
        return !form.LeavesRest || ((!needs.RingsOut || end < bar.Length) && !needs.Joined.Contains(end));
    }

    // Cells of the trade begin on beats and end on them; those of two beats begin on strong ones.
    private bool IsOnItsBeat(Beats at, Beats end)
    {
        var beat = bar.BeatStarts.Items.IndexOf(at);
        if (beat < 0) return false;
        if (end == (beat + 1 < bar.BeatStarts.Count ? bar.BeatStarts[beat + 1] : bar.Length)) return true;
        return bar.IsStrong(at) && (end == bar.Length || bar.BeatStarts.Items.Contains(end)) && end - at <= Beats.Of(2);
    }

    private static IEnumerable<(RhythmCell Cell, double Bits)> Usual(PhraseModel model, SongHabits habits)
    {
        var trade = model.Cells.ToDictionary(c => c.Cell, c => c.Bits);
        foreach (var (cell, count) in habits.Cells)
        {
            // A rhythm of the song's own is twice as likely when it is heard once, four times when three times, and so on.
            var had = Math.Log2(1 + count);
            trade[cell] = Math.Max(-1, (trade.TryGetValue(cell, out var bits) ? bits : 3.5) - had);
        }
        return trade.OrderBy(c => c.Key.ToString(), StringComparer.Ordinal).Select(c => (c.Key, c.Value));
    }

    // Nothing shorter than the fastest value; nothing longer than the slowest but before a rest.
    private static bool Keeps(CellForm form, DensityRule? density)
    {
        if (density is null) return true;
        var (shortest, longest) = (new NoteValue(density.Fastest).Length, new NoteValue(density.Slowest).Length);
        for (var i = 0; i < form.Notes.Length; i++)
        {
            var length = form.Notes[i].Length;
            if (length < shortest || (length > longest && !(form.LeavesRest && i == form.Notes.Length - 1))) return false;
        }
        return true;
    }
}
