using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Model;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Search;

/// <summary>Whether one note may follow another, and what that costs.</summary>
internal sealed class StepRules
{
    /// <summary>The widest stretch of frets that one finger hammers or pulls to another over.</summary>
    public const int FingerSpan = 4;

    private const int WidestSlide = 7;

    private readonly PhraseModel model;
    private readonly double[] intervals;
    private readonly double[] places;
    private readonly double handEffort;

    /// <param name="model">The weights.</param>
    /// <param name="habits">The song's own intervals.</param>
    /// <param name="neck">The neck, for how far the hand has to go.</param>
    /// <param name="level">From 0, easy, to 1: easy lines shun what is hard to reach.</param>
    public StepRules(PhraseModel model, SongHabits habits, Neck neck, double level)
    {
        this.model = model;
        intervals = [.. Enumerable.Range(0, 49).Select(semitones => habits.Bits(semitones, model))];
        places = [.. Enumerable.Range(0, 49).Select(fret => NeckGeometry.FromNut(neck.ScaleLength, neck.Capo.CountedFrom + fret))];
        handEffort = 1.8 - 0.8 * level;
    }

    /// <summary>True when the rules and the hand let a note follow another.</summary>
    public bool MayFollow(Slot from, PlaceNode a, Slot to, PlaceNode b)
    {
        if (a.Fret > 0 && b.Fret > 0)
        {
            var seconds = (to.Start - from.Start).ToDouble() * to.Bar.SecondsPerQuarter;
            if (Math.Abs(places[a.Fret] - places[b.Fret]) > model.HandSpeed * seconds + 75) return false;
        }
        if (!to.FollowsRest)
        {
            if (to.Given is null || from.Given is null)
            {
                if (to.Bar.IsFree && to.Bar.WidestLeap is { } widest && Math.Abs(b.Height - a.Final) > widest) return false;
                if (to.Bar.IsFree && b.Height == a.Final && to.Bar.ForbidsRepeats) return false;
            }
        }
        foreach (var way in to.Ways)
        {
            if (AsksForNoteBefore(way) && (to.FollowsRest || !Leads(way, a, b))) return false;
        }
        return true;
    }

    /// <summary>True when a way to a note asks something of the note before.</summary>
    public static bool AsksForNoteBefore(Approach way) => way.Kind switch
    {
        ApproachKind.Bend => false,
        ApproachKind.Slide => way.From is not null,
        _ => true,
    };

    /// <summary>True when a note without a rest before it is reached as asked.</summary>
    public static bool Leads(Approach way, PlaceNode a, PlaceNode b)
    {
        if (way.Kind == ApproachKind.Step) return Approaches.IsStep(way, a.Final, b.Height);
        if (a.String != b.String || a.Bend > 0 || a.Fret == b.Fret || (way.From is { } name && NoteName.Wrap(a.Final, 12) != name.PitchClass)) return false;
        var frets = b.Fret - a.Fret;
        return way.Kind switch
        {
            ApproachKind.HammerOn => frets is > 0 and <= FingerSpan,
            ApproachKind.PullOff => frets is < 0 and >= -FingerSpan || (b.Fret == 0 && a.Fret > 0),
            _ => a.Fret > 0 && b.Fret > 0 && Math.Abs(frets) <= WidestSlide && (way.Side is null || (way.Side == Side.Below) == (frets > 0)),
        };
    }

    /// <summary>What it costs to go there, in bits.</summary>
    public double Cost(PlaceNode a, Slot to, PlaceNode b)
    {
        var interval = intervals[Math.Min(48, Math.Abs(b.Height - a.Final))];
        var hand = Math.Max(0, Math.Abs(a.String - b.String) - 1) * model.SkippedString;
        if (a.Fret > 0 && b.Fret > 0) hand += Math.Max(0, Math.Abs(a.Fret - b.Fret) - 2) * model.FarFret;
        // After a breath the line begins anew: where it comes from matters little.
        return to.FollowsRest ? interval * 0.4 + hand * 0.3 : interval + hand * handEffort + (b.Height == a.Final ? model.Repeat : 0);
    }

    /// <summary>How a note is come to: 0 from the same or from nowhere, 1 and 2 up and down by step, 3 and 4 by leap.</summary>
    public int WayTo(PlaceNode a, Slot to, PlaceNode b)
    {
        var moved = b.Height - a.Final;
        if (moved == 0 || to.FollowsRest) return 0;
        return (moved > 0 ? 1 : 2) + (Math.Abs(moved) >= model.Leap ? 2 : 0);
    }

    public const int Ways = 5;

    /// <summary>What it costs to go on in one way after having come in another, in bits.</summary>
    public double TurnCost(int before, int now)
    {
        if (before == 0 || now == 0) return 0;
        var turns = before % 2 != now % 2;
        if (before <= 2) return turns ? model.TurnAfterStep : 0;
        return (turns ? 0 : model.OnAfterLeap) + (now > 2 ? model.LeapAfterLeap : 0);
    }
}
