using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>Notes that the fretting hand begins together.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="Item">The event they are in.</param>
/// <param name="Notes">Those that a finger stops; at least one.</param>
public sealed record HandMoment(int Bar, Event Item, ImmutableArray<Note> Notes);

/// <summary>A stretch of a part in which the hand does not change its position.</summary>
/// <param name="Position">The fret the index finger stands at.</param>
/// <param name="Moments">In order of time; at least one.</param>
public sealed record HandStay(int Position, ImmutableArray<HandMoment> Moments)
{
    private const int LeastMoments = 3;

    /// <summary>True where a teacher would name the position: several notes at more than one fret, most of them under the fingers at home there, and not named shapes alone.</summary>
    public required bool IsWorthNaming { get; init; }

    /// <summary>The stays of a part or riff in written order.</summary>
    /// <param name="content">What is played.</param>
    /// <param name="hands">The hand plan.</param>
    public static IEnumerable<HandStay> Of(ValueList<PartBar> content, SongHands hands)
    {
        var stay = ImmutableArray.CreateBuilder<HandMoment>();
        var position = 0;
        foreach (var moment in Stopped(content, hands))
        {
            var here = hands.Of(moment.Notes[0].Id).Position;
            if (stay.Count > 0 && here != position) yield return Stay(position, stay, hands);
            position = here;
            stay.Add(moment);
        }
        if (stay.Count > 0) yield return Stay(position, stay, hands);
    }

    private static HandStay Stay(int position, ImmutableArray<HandMoment>.Builder moments, SongHands hands)
    {
        var notes = moments.SelectMany(moment => moment.Notes).ToList();
        var isWorthNaming = moments.Count >= LeastMoments && moments.Any(moment => moment.Item.Shape is null)
            && notes.Select(note => note.Fret).Distinct().Count() > 1 && 3 * notes.Count(note => hands.Of(note.Id).IsAtHome(note)) >= 2 * notes.Count;
        var stay = new HandStay(position, moments.ToImmutable()) { IsWorthNaming = isWorthNaming };
        moments.Clear();
        return stay;
    }

    private static IEnumerable<HandMoment> Stopped(ValueList<PartBar> content, SongHands hands)
    {
        for (var bar = 0; bar < content.Count; bar++)
        {
            foreach (var item in content[bar].Strands.SelectMany(strand => strand.Events).OrderBy(item => item.Start))
            {
                var notes = item.Notes.Items.Where(note => !note.IsTiedFromBefore && hands.Of(note.Id).Finger is not null).ToImmutableArray();
                if (notes.Length > 0) yield return new HandMoment(bar, item, notes);
            }
        }
    }
}
