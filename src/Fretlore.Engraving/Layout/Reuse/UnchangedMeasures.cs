using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.Reuse;

/// <summary>Which measures of a song are as they were in an earlier layout, in everything that is drawn of them.</summary>
internal sealed class UnchangedMeasures
{
    private readonly EarlierLayout earlier;
    private readonly SystemSources before;
    private readonly SystemSources now;
    private readonly ImmutableArray<bool> isSame;

    /// <param name="earlier">The earlier layout.</param>
    /// <param name="before">What it was drawn from.</param>
    /// <param name="now">What this one is drawn from.</param>
    public UnchangedMeasures(EarlierLayout earlier, SystemSources before, SystemSources now)
    {
        (this.earlier, this.before, this.now) = (earlier, before, now);
        if (!AreSameRows()) return;
        var old = before.Model.Measures;
        isSame = [.. now.Model.Measures.Select((measure, i) => i < old.Length && IsSame(old[i], measure))];
    }

    /// <summary>The earlier drawing of a system; null where anything in it, or in the measure after it, is new.</summary>
    public DrawnSystem? Find(SystemGeometry geometry, double pageWidth)
    {
        if (isSame.IsDefault || earlier.Over(geometry, pageWidth) is not { } drawn) return null;
        foreach (var place in geometry.Measures)
        {
            if (!isSame[place.Measure.Index] || !HasSameLinks(place.Measure)) return null;
        }
        if (geometry.Next is not { } next) return drawn.Geometry.Next is null ? drawn : null;
        return drawn.Geometry.Next is not null && isSame[next.Index] ? drawn : null;
    }

    private bool AreSameRows()
    {
        var (old, model) = (before.Model, now.Model);
        if (before.Options != now.Options || old.Staves.Length != model.Staves.Length || old.Hands.Strokes != model.Hands.Strokes) return false;
        for (var s = 0; s < model.Staves.Length; s++)
        {
            var (was, staff) = (old.Staves[s], model.Staves[s]);
            if (was with { Part = was.Part with { Bars = [] } } != staff with { Part = staff.Part with { Bars = [] } }) return false;
        }
        return true;
    }

    private bool IsSame(Measure was, Measure measure)
    {
        if (was.FirstBar != measure.FirstBar || was.BarCount != measure.BarCount || was.Bar != measure.Bar || was.LastBar != measure.LastBar) return false;
        if (was.ShowsMeter != measure.ShowsMeter || was.SignatureBefore != measure.SignatureBefore || was.Section != measure.Section || was.StartsSystem != measure.StartsSystem) return false;
        if (!was.Columns.AsSpan().SequenceEqual(measure.Columns.AsSpan())) return false;
        for (var s = 0; s < measure.Parts.Length; s++)
        {
            var (old, part) = (was.Parts[s], measure.Parts[s]);
            // A free bar shows what its road map says.
            if (old.Source != part.Source || old.NewCapo != part.NewCapo || part.IsFree || old.IsFree || old.Voices.Length != part.Voices.Length) return false;
            if (!before.Chords.In(s, was).SequenceEqual(now.Chords.In(s, measure)) || !HasSamePositions(s, measure)) return false;
            for (var v = 0; v < part.Voices.Length; v++)
            {
                if (!HasSameSigns(old.Voices[v], part.Voices[v])) return false;
            }
        }
        return true;
    }

    private bool HasSamePositions(int staff, Measure measure)
    {
        var part = now.Model.Staves[staff].PartIndex;
        return before.Model.Hands.PositionsIn(part, measure.FirstBar).SequenceEqual(now.Model.Hands.PositionsIn(part, measure.FirstBar));
    }

    // The notes are the same, so that only what depends on the music around them can differ: spelling, accidentals, degrees, fingers.
    private bool HasSameSigns(Voice was, Voice voice)
    {
        if (was.Slots.Length != voice.Slots.Length) return false;
        for (var i = 0; i < voice.Slots.Length; i++)
        {
            Slot old = was.Slots[i], slot = voice.Slots[i];
            if (old.Column != slot.Column || !AreSame(old.Heads, slot.Heads) || !AreSame(old.Graces, slot.Graces) || old.Reached.Length != slot.Reached.Length) return false;
            for (var r = 0; r < slot.Reached.Length; r++)
            {
                if (!AreSameSteps(old.Reached[r], slot.Reached[r])) return false;
            }
            if (!AreSameSteps(old.Trilled, slot.Trilled)) return false;
        }
        return true;
    }

    private bool AreSameSteps(ReachedStep? was, ReachedStep? step) =>
        was is null || step is null ? was == step : was.Of.AsSpan().SequenceEqual(step.Of.AsSpan()) && AreSame(was.Heads, step.Heads);

    private bool AreSame(ImmutableArray<Head> was, ImmutableArray<Head> heads)
    {
        if (was.Length != heads.Length) return false;
        for (var i = 0; i < heads.Length; i++)
        {
            var (old, head) = (was[i], heads[i]);
            if (old.Position != head.Position || old.Accidental != head.Accidental || old.Shape != head.Shape || old.Note.Id != head.Note.Id) return false;
            var id = head.Note.Id;
            if (before.Reading.SpellingOf(id) != now.Reading.SpellingOf(id) || before.Model.Hands.FingerOf(old.Note) != now.Model.Hands.FingerOf(head.Note)) return false;
            if (now.Options.Degrees && !HasSameDegree(id.Index)) return false;
        }
        return true;
    }

    private bool HasSameDegree(int note)
    {
        if (before.Reading.Roles.IsDefaultOrEmpty || now.Reading.Roles.IsDefaultOrEmpty) return before.Reading.Roles.IsDefaultOrEmpty == now.Reading.Roles.IsDefaultOrEmpty;
        return before.Reading.Roles[note] == now.Reading.Roles[note];
    }

    // Ties, slurs and glides also show where they come from and go to in other systems.
    private bool HasSameLinks(Measure measure)
    {
        foreach (var part in measure.Parts)
        {
            foreach (var voice in part.Voices)
            {
                foreach (var slot in voice.Slots)
                {
                    foreach (var head in slot.Graces) if (!HasSameLinks(head)) return false;
                    foreach (var head in slot.Heads) if (!HasSameLinks(head)) return false;
                }
            }
        }
        return true;
    }

    private bool HasSameLinks(Head head)
    {
        var (old, links) = (before.Model.Links, now.Model.Links);
        PlacedNote? was = old.Before(head.Note), note = links.Before(head.Note);
        if (!ArePlacedAlike(was, note)) return false;
        // A bend is counted from where the first of a chain of tied notes began.
        while (note is { Note.IsTiedFromBefore: true })
        {
            (was, note) = (old.Before(was!.Note), links.Before(note.Note));
            if (!ArePlacedAlike(was, note)) return false;
        }
        (was, note) = (old.After(head.Note), links.After(head.Note));
        if (!ArePlacedAlike(was, note)) return false;
        while (note is { Note.IsHeldOn: true })
        {
            (was, note) = (old.After(was!.Note), links.After(note.Note));
            if (!ArePlacedAlike(was, note)) return false;
        }
        return true;
    }

    private static bool ArePlacedAlike(PlacedNote? was, PlacedNote? note)
    {
        if (was is null || note is null) return was is null && note is null;
        return was.Note == note.Note && was.Slot.Measure == note.Slot.Measure && was.Slot.Column == note.Slot.Column && was.Head == note.Head
            && was.IsGrace == note.IsGrace && was.Rule == note.Rule && was.Sign.Position == note.Sign.Position;
    }
}
