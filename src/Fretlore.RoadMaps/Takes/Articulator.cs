using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Says how the chosen notes are played: what targets ask for, and by chance slurs, slides and vibrato as the song has them.</summary>
internal sealed class Articulator(PhraseModel model, SongHabits habits, double level, Dice dice)
{
    // A slur goes on over no more notes than this: then the pick comes again.
    private const int LongestSlur = 3;

    // Notes further apart than this are picked, in seconds.
    private const double SlurSeconds = 0.45;

    private const int WidestSlide = 5;

    public PlayedNote[] Play(Slot[] slots, PlaceNode[] places)
    {
        var played = new PlayedNote[slots.Length];
        var slurred = 0;
        for (var i = 0; i < slots.Length; i++)
        {
            var note = new PlayedNote(slots[i], places[i]);
            if (slots[i].Given is null)
            {
                note = Reached(note, i > 0 ? played[i - 1] : null) ?? (slots[i].Ways.Count == 0 && i > 0 ? Joined(note, played[i - 1], slurred) : note);
                note = note with { Vibrato = Shakes(note) };
            }
            slurred = note.Attack is Attack.HammerOn or Attack.PullOff ? slurred + 1 : 0;
            played[i] = note;
        }
        return played;
    }

    /// <summary>As the targets here ask; null when they ask for nothing of the hand.</summary>
    private static PlayedNote? Reached(PlayedNote note, PlayedNote? before)
    {
        foreach (var way in note.Slot.Ways)
        {
            switch (way.Kind)
            {
                case ApproachKind.HammerOn: return note with { Attack = Attack.HammerOn };
                case ApproachKind.PullOff: return note with { Attack = Attack.PullOff };
                case ApproachKind.Slide when way.From is not null && before is not null: return note with { Attack = Attack.Glide };
                case ApproachKind.Slide: return note with { GlideIn = way.Side == Side.Above ? GlideIn.FromAbove : GlideIn.FromBelow };
            }
        }
        return null;
    }

    private PlayedNote Joined(PlayedNote note, PlayedNote before, int slurred)
    {
        var (a, b) = (before.Place, note.Place);
        if (note.Slot.FollowsRest || a.String != b.String || a.Fret == b.Fret || a.Bend > 0 || b.Bend > 0 || a.Final != a.Height || before.Slot.Given is { Notes.Length: > 1 }) return note;
        var frets = b.Fret - a.Fret;
        var seconds = (note.Slot.Start - before.Slot.Start).ToDouble() * note.Slot.Bar.SecondsPerQuarter;
        if (seconds > SlurSeconds) return note;
        var share = dice.Share();
        var legato = SongHabits.Blend(model.Legato, habits.Joined, habits.OnString, model.TradeNotes) * (0.25 + 0.75 * level);
        var fits = frets > 0 ? b.Fret > 0 && (a.Fret == 0 || frets <= StepRules.FingerSpan) : b.Fret == 0 || -frets <= StepRules.FingerSpan;
        if (fits && slurred < LongestSlur && share < legato) return note with { Attack = frets > 0 ? Attack.HammerOn : Attack.PullOff };
        var slide = SongHabits.Blend(model.Slide, habits.Slid, habits.OnString, model.TradeNotes) * level;
        var maySlide = a.Fret > 0 && b.Fret > 0 && Math.Abs(frets) <= WidestSlide && !note.Slot.Bar.Forbids<Avoided.Slides>();
        return maySlide && share > 1 - slide ? note with { Attack = Attack.Glide } : note;
    }

    private bool Shakes(PlayedNote note)
    {
        var draw = dice.Share();
        if (note.Slot.Seconds < model.LongSeconds || note.Place.Fret == 0) return false;
        return draw < SongHabits.Blend(model.Vibrato, habits.Shaken, habits.Long, model.TradeNotes) * (0.5 + 0.5 * level);
    }
}
