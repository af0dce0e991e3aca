using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Gives the free bars of a planned solo their rhythm: cells that come again, landings held, breaths.</summary>
internal sealed class RhythmMaker(SoloStretch stretch, Skeleton skeleton, IReadOnlyDictionary<int, RhythmPool> pools, PhraseModel model, Dice dice)
{
    // A landing is held no longer than this, in quarter notes, unless the road map says so.
    private static readonly Beats LongestLanding = Beats.Of(3);

    private readonly ImmutableArray<(Beats At, CellForm Form)>?[] cells = new ImmutableArray<(Beats, CellForm)>?[stretch.Count];
    private ImmutableArray<RhythmCell> motif = [];

    /// <summary>For each bar its notes, in order; empty for what is no free phrase. Null when the rhythm can't be made this time.</summary>
    public ImmutableArray<RhythmNote>[]? Make()
    {
        var notes = new ImmutableArray<RhythmNote>[stretch.Count];
        Array.Fill(notes, []);
        foreach (var phrase in skeleton.Phrases)
        {
            if (phrase.Landing is null) continue;
            motif = pools[phrase.First].DrawMotif(dice, model.MotifCells);
            for (var bar = phrase.First; bar <= phrase.Last; bar++)
            {
                if (Cells(phrase, bar) is not { } drawn) return null;
                cells[bar - 1] = drawn;
                notes[bar - 1] = [.. drawn.SelectMany(c => c.Form.Notes.Select(n => n with { At = c.At + n.At }))];
            }
            StartLate(phrase, notes);
            if (!Land(phrase, notes)) return null;
        }
        return notes;
    }

    private ImmutableArray<(Beats At, CellForm Form)>? Cells(PlannedPhrase phrase, int bar)
    {
        var (pool, needs) = (pools[bar], Needs(phrase, bar));
        if (phrase.Echoes >= 0)
        {
            var echoed = skeleton.Phrases[phrase.Echoes];
            if (cells[echoed.First + bar - phrase.First - 1] is { } said && pool.Takes(said, needs)) return said;
        }
        else if (bar > phrase.First && cells[phrase.First - 1] is { } again && dice.Comes(model.MotifAgain) && pool.Takes(again, needs)) return again;
        return pool.Draw(dice, needs, motif, model.OtherCell);
    }

    private RhythmNeeds Needs(PlannedPhrase phrase, int bar)
    {
        var onsets = skeleton.TargetsIn(bar).Select(t => t.At).ToList();
        if (bar == phrase.Last) onsets.Add(phrase.Landing!.Value);
        var joined = skeleton.TargetsIn(bar).Where(AsksForNoteBefore).Select(t => t.At).ToImmutableArray();
        var ringsOut = bar < stretch.Count && skeleton.TargetsIn(bar + 1).Any(t => t.At.IsZero && AsksForNoteBefore(t));
        return new RhythmNeeds([.. onsets.Distinct()], joined, ringsOut);
    }

    private static bool AsksForNoteBefore(PlannedTarget target) => target.Wanted.Any(w => w.How is { } how && StepRules.AsksForNoteBefore(how));

    // What comes before the second beat, or a little more, is left out; a note that must be there, and the one before it, stay.
    private void StartLate(PlannedPhrase phrase, ImmutableArray<RhythmNote>[] notes)
    {
        if (!dice.Comes(model.LateStart)) return;
        var bar = phrase.First;
        var first = cells[bar - 1]!.Value[0];
        var left = notes[bar - 1].Where(n => n.At >= first.Form.Length).ToImmutableArray();
        var must = skeleton.TargetsIn(bar).Select(t => t.At).ToList();
        if (bar == phrase.Last) must.Add(phrase.Landing!.Value);
        if (left.Length < 2 || must.Exists(at => left.IndexOf(left.FirstOrDefault(n => n.At == at)) < 1)) return;
        notes[bar - 1] = left;
    }

    /// <summary>Ends the phrase on its landing: held, and then a breath.</summary>
    private bool Land(PlannedPhrase phrase, ImmutableArray<RhythmNote>[] notes)
    {
        var facts = stretch.Bars[phrase.Last - 1];
        var own = notes[phrase.Last - 1];
        var at = phrase.Landing!.Value;
        var index = -1;
        for (var i = 0; i < own.Length; i++)
        {
            if (own[i].At == at) index = i;
        }
        if (index < 0) return false;
        var note = own[index];
        // The first note of a tuplet stands on a beat and can be a plain value; another one keeps its own.
        var isInside = note.Tuplet is not null && !cells[phrase.Last - 1]!.Value.Any(c => c.At == at);
        if (!isInside) note = new RhythmNote(at, LandingLength(phrase, facts, at), null);
        if (facts.Density is { } density && note.Length < new NoteValue(density.Fastest).Length) return false;
        notes[phrase.Last - 1] = [.. own[..index], note];
        return true;
    }

    private Beats LandingLength(PlannedPhrase phrase, StretchBar bar, Beats at)
    {
        var room = bar.Length - at;
        var next = phrase.Last < stretch.Count ? skeleton.TargetsIn(phrase.Last + 1) : [];
        // A target right after the bar line that must be reached without a rest.
        if (next.Any(t => t.At.IsZero && AsksForNoteBefore(t))) return room;
        if (phrase.Last == stretch.Count && skeleton.HasEnd && stretch.Map.RulesOf<EndRule>().Any(e => e.IsHeld)) return room;
        var breath = Beats.Of((long)Math.Ceiling(model.Breath * 4), 4);
        var longest = Beats.Min(LongestLanding, room - breath);
        var least = Beats.Of((long)Math.Ceiling(model.LandingNote * 4), 4);
        if (longest <= least) return Beats.Min(room, Beats.Max(longest, least));
        var choices = new List<Beats>();
        for (var length = least; length <= longest; length += Beats.Of(1, 2)) choices.Add(length);
        return choices[Math.Max(0, choices.Count - 1 - dice.Below(Math.Min(3, choices.Count)))];
    }
}
