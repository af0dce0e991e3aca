using Fretlore.Guitar;
using Fretlore.Hands.Grips;

namespace Fretlore.Hands.Placing;

/// <summary>A line as the search sees it.</summary>
/// <param name="Notes">Its notes.</param>
/// <param name="Chains">Those that must share a string.</param>
/// <param name="ChainOf">For each note its chain and its place in it.</param>
/// <param name="Rules">Neck and hand.</param>
/// <param name="Holds">What the hand can hold.</param>
/// <param name="MayLoseNotes">True to leave out a doubled note rather than ask for what no hand can hold.</param>
internal sealed record PlacingLine(
    IReadOnlyList<OpenNote> Notes, PlaceChain[] Chains, (int Chain, int Step)[] ChainOf, GripRules Rules, HoldTable Holds, bool MayLoseNotes);

/// <summary>Chooses strings and frets for notes, together with the fingers that would play them.</summary>
/// <remarks>
/// A search from moment to moment, as the hand plan's is (see <c>PlanSearch</c>), over where the notes are as well as how they are held. Ways that differ
/// only in how they came about are one; of the others the cheapest are kept at each moment (see <see cref="PlacingCosts.MostPaths"/>), so the answer is good but not proved
/// the best. The hand plan of what comes out is exact again.
/// </remarks>
public static class NotePlacer
{
    /// <summary>A place for each note; null for one that is left out.</summary>
    /// <param name="notes">In order of time within each strand; a note stands after the one it is joined to.</param>
    /// <param name="neck">The neck, for its lengths.</param>
    /// <param name="size">The hand.</param>
    /// <param name="mayArrange">True to play what the neck has not in another octave, and to leave out a doubled note that no hand can hold with the others.</param>
    public static NotePlace?[] Place(IReadOnlyList<OpenNote> notes, Neck neck, HandSize size, bool mayArrange)
    {
        if (AreDecided(notes)) return [.. notes.Select(note => note.Given)];
        var (chains, chainOf) = new ChainBuilder(notes, mayArrange).Build();
        var rules = new GripRules(NeckGeometry.Of(neck), size);
        var line = new PlacingLine(notes, chains, chainOf, rules, new HoldTable(rules), mayArrange);
        var strings = notes.Count == 0 ? 0 : notes.Max(note => note.Neck.StringCount);
        var search = new PlacingSearch(line, strings);
        foreach (var moment in PlaceMoment.Of(notes, chainOf)) search.Add(moment);

        var places = new NotePlace?[notes.Count];
        foreach (var (chain, candidate) in search.Chosen())
        {
            if (candidate.IsLeftOut) continue;
            for (var step = 0; step < candidate.Places.Length; step++) places[chains[chain].Notes[step]] = candidate.Places[step];
        }
        return places;
    }

    // Nothing to choose where every note has a place and none is in another's way.
    private static bool AreDecided(IReadOnlyList<OpenNote> notes)
    {
        var onString = new List<(double Start, double End)>?[HighestString + 1];
        foreach (var note in notes)
        {
            if (note.Given is not { } given || given.String.Value > HighestString) return false;
            (onString[given.String.Value] ??= []).Add((note.Claims, note.End));
        }
        foreach (var list in onString)
        {
            if (list is null) continue;
            list.Sort();
            for (var i = 1; i < list.Count; i++)
            {
                if (list[i].Start < list[i - 1].End - PlaceMoment.SameTime) return false;
            }
        }
        return true;
    }

    private const int HighestString = 12;
}
