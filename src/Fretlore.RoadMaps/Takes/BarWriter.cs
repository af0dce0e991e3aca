using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Writes the notes of a take as bars: values tied where they must be, rests between, written phrases as they stand.</summary>
internal sealed class BarWriter(SoloStretch stretch, Skeleton skeleton)
{
    private readonly Neck neck = stretch.Part.Neck;

    public ImmutableArray<PartBar> Write(PlayedNote[] notes)
    {
        var bars = new PartBar[stretch.Count];
        foreach (var phrase in skeleton.Phrases)
        {
            for (var bar = phrase.First; bar <= phrase.Last; bar++)
            {
                bars[bar - 1] = phrase.Kind == PhraseKind.Fixed ? stretch.Bars[bar - 1].Fixed! with { RoadMap = null }
                    : phrase.Lick is { } lick && lick.Kept == LickFinder.MomentsOf(lick.Riff).Length ? lick.Riff.Content[bar - phrase.First] with { RoadMap = null }
                    : new PartBar(stretch.Part.Bars[stretch.Use.FirstBar + bar - 1].Neck, [new Strand(StrandKind.Main, Events(bar, phrase.Lick, notes).ToValueList())]);
            }
        }
        return Numbered(bars);
    }

    private List<Event> Events(int bar, PlannedLick? lick, PlayedNote[] notes)
    {
        var facts = stretch.Bars[bar - 1];
        var events = new List<Event>();
        var at = Beats.Zero;
        if (lick is not null)
        {
            events.AddRange(KeptEvents(bar, lick));
            if (events.Count > 0) at = events[^1].End;
        }
        foreach (var note in notes)
        {
            if (note.Slot.Given is not null || note.Slot.Bar.Number != bar) continue;
            Rest(at, note.Slot.At, facts, events);
            Sound(note, facts, events);
            at = Beats.Min(note.Slot.At + note.Slot.Length, facts.Length);
        }
        Rest(at, facts.Length, facts, events);
        return events;
    }

    // The events of a lick up to the first moment that is played in another way.
    private static IEnumerable<Event> KeptEvents(int bar, PlannedLick lick)
    {
        var moments = LickFinder.MomentsOf(lick.Riff);
        var number = bar - lick.First + 1;
        var cut = lick.Kept < moments.Length ? moments[lick.Kept] : null;
        var lastKept = moments[lick.Kept - 1];
        foreach (var item in lick.Riff.Content[number - 1].Strands.Items.FirstOrDefault()?.Events ?? default)
        {
            if (cut is not null && (number > cut.Bar || (number == cut.Bar && item.Start >= cut.At))) yield break;
            // A rest before the cut belongs to what comes, and nothing is glided to or held for what does not.
            if (item.IsRest && (number > lastKept.Bar || (number == lastKept.Bar && item.Start > lastKept.At))) yield break;
            yield return item;
        }
    }

    private void Sound(PlayedNote note, StretchBar bar, List<Event> events)
    {
        var (slot, place) = (note.Slot, note.Place);
        var sounding = neck.Sounding(new StringNumber(place.String), new Fret(place.Fret));
        var first = new Note
        {
            String = new StringNumber(place.String),
            Fret = new Fret(place.Fret),
            Sounding = sounding,
            Attack = note.Attack,
            GlideIn = note.GlideIn,
            Bend = place.Bend > 0 ? new Bend(0, [place.Bend * 100]) : null,
            Vibrato = note.Vibrato ? new Vibrato(VibratoWidth.Normal, place.Bend > 0 ? 1 : 0) : default,
        };
        var pieces = Pieces(slot.At, Beats.Min(slot.At + slot.Length, bar.Length), slot.Tuplet, bar).ToList();
        for (var i = 0; i < pieces.Count; i++)
        {
            var held = i > 0;
            var piece = held
                ? first with { Attack = Attack.Held, GlideIn = GlideIn.None, Bend = place.Bend > 0 ? new Bend(place.Bend * 100, []) : null, Vibrato = note.Vibrato ? new Vibrato(VibratoWidth.Normal) : default }
                : first;
            events.Add(new Event
            {
                Start = pieces[i].At,
                Value = pieces[i].Value,
                Tuplet = slot.Tuplet,
                Notes = [piece with { IsHeldOn = i + 1 < pieces.Count }],
            });
        }
    }

    private static IEnumerable<(Beats At, NoteValue Value)> Pieces(Beats from, Beats to, Tuplet? tuplet, StretchBar bar)
    {
        if (tuplet is not { } group) return NoteValues.Fill(from, to, bar.BeatStarts);
        return NoteValues.Of((to - from) / group.Factor) is { } value ? [(from, value)] : NoteValues.Fill(from, to, bar.BeatStarts);
    }

    private static void Rest(Beats from, Beats to, StretchBar bar, List<Event> events)
    {
        // What is left of a tuplet is rested in its own values.
        if (events.Count > 0 && events[^1].Tuplet is { } tuplet)
        {
            var unit = new NoteValue(tuplet.Unit);
            var length = unit.Length * tuplet.Factor;
            while (from < to && !GroupIsFull(events, tuplet))
            {
                events.Add(new Event { Start = from, Value = unit, Tuplet = tuplet });
                from += length;
            }
        }
        foreach (var beat in bar.BeatStarts.Items.Append(bar.Length).Where(b => b > from && b < to).Append(to))
        {
            if (beat <= from) continue;
            foreach (var (at, value) in NoteValues.Fill(from, beat, bar.BeatStarts)) events.Add(new Event { Start = at, Value = value });
            from = beat;
        }
    }

    private static bool GroupIsFull(List<Event> events, Tuplet tuplet)
    {
        var start = events.Count - 1;
        while (start > 0 && events[start - 1].Tuplet == tuplet && events[start - 1].End == events[start].Start) start--;
        return (events[^1].End - events[start].Start).Modulo(tuplet.GroupLength).IsZero;
    }

    private static ImmutableArray<PartBar> Numbered(PartBar[] bars)
    {
        var next = 0;
        return
        [
            .. bars.Select(bar => bar with
            {
                Strands = bar.Strands.Select(s => s with
                {
                    Events = s.Events.Select(e => e with { Graces = Ids(e.Graces), Notes = Ids(e.Notes) }).ToValueList(),
                }).ToValueList(),
            }),
        ];

        ValueList<Note> Ids(ValueList<Note> notes) => notes.Select(n => n with { Id = new NoteId(next++) }).ToValueList();
    }
}
