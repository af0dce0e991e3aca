using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Hands.Placing;

/// <summary>Puts notes that must share a string together and lists the ways to play them.</summary>
internal sealed class ChainBuilder(IReadOnlyList<OpenNote> notes, bool mayMoveOctaves)
{
    private const int MostOctaves = 4;

    /// <summary>All chains, each with its candidates, and for each note its chain and its place in it.</summary>
    public (PlaceChain[] Chains, (int Chain, int Step)[] ChainOf) Build()
    {
        var members = new List<List<int>>();
        var chainOf = new (int Chain, int Step)[notes.Count];
        for (var i = 0; i < notes.Count; i++)
        {
            var before = notes[i].JoinedTo;
            // Two notes that go on from one can't both be on its string: the second begins anew.
            var goesOn = before >= 0 && before < i && members[chainOf[before].Chain][^1] == before;
            if (!goesOn) members.Add([]);
            var chain = goesOn ? chainOf[before].Chain : members.Count - 1;
            chainOf[i] = (chain, members[chain].Count);
            members[chain].Add(i);
        }
        var chains = new List<PlaceChain>();
        foreach (var list in members) AddChains(list, chains, chainOf);
        return ([.. chains], chainOf);
    }

    // Where nothing may be lost, notes that no one string has are played apart.
    private void AddChains(List<int> list, List<PlaceChain> chains, (int Chain, int Step)[] chainOf)
    {
        var chain = new PlaceChain([.. list], list.Max(i => notes[i].End));
        chain.Candidates = [.. Candidates(chain).OrderBy(c => c.Cost).ThenBy(c => c.String)];
        if (!mayMoveOctaves && list.Count > 1 && chain.Candidates.All(c => c.IsLeftOut))
        {
            foreach (var note in list) AddChains([note], chains, chainOf);
            return;
        }
        for (var step = 0; step < list.Count; step++) chainOf[list[step]] = (chains.Count, step);
        chains.Add(chain);
    }

    private IEnumerable<PlaceCandidate> Candidates(PlaceChain chain)
    {
        var given = Given(chain);
        if (given is not null) yield return given;
        if (given is { IsLeftOut: true }) yield break;
        // What is decided gives way only where something else is on its string.
        var more = given is null ? 0 : PlacingCosts.AwayFromGiven;
        yield return new PlaceCandidate(0, [], PlacingCosts.NoteLost + more);
        var found = false;
        foreach (var octaves in Octaves())
        {
            // Further octaves only where nearer ones are not on the neck.
            if (found && octaves >= 0) yield break;
            for (var number = 1; number <= notes[chain.Notes[0]].Neck.StringCount; number++)
            {
                if (OnString(chain, new StringNumber(number), octaves) is not { } candidate) continue;
                found = true;
                yield return candidate with { Cost = candidate.Cost + more };
            }
        }
    }

    // 0, then 1 and -1, then 2 and -2 and so on.
    private IEnumerable<int> Octaves()
    {
        yield return 0;
        for (var octaves = 1; mayMoveOctaves && octaves <= MostOctaves; octaves++)
        {
            yield return octaves;
            yield return -octaves;
        }
    }

    // What is decided already stays, as long as all of the chain can follow it.
    private PlaceCandidate? Given(PlaceChain chain)
    {
        var first = notes[chain.Notes[0]];
        if (first.IsGivenUp) return new PlaceCandidate(0, [], 0);
        if (chain.Notes.FirstOrDefault(i => notes[i].Given is not null, -1) is not (>= 0 and var decided)) return null;
        var given = notes[decided].Given!;
        var octaves = notes[decided].Note.IsDead ? 0 : (given.Sounding - notes[decided].Note.Sounding) / 12;
        var places = new NotePlace[chain.Notes.Length];
        for (var i = 0; i < places.Length; i++)
        {
            var open = notes[chain.Notes[i]];
            if (open.Given is { } place && place.String == given.String) places[i] = place;
            else if (FretFinder.On(open, given.String, octaves) is { } on) places[i] = on.Place;
            else return null;
        }
        return HasStoppedGlides(chain, places) ? new PlaceCandidate(given.String.Value, places, 0) : null;
    }

    private PlaceCandidate? OnString(PlaceChain chain, StringNumber number, int octaves)
    {
        var places = new NotePlace[chain.Notes.Length];
        var cost = Math.Abs(octaves) * (PlacingCosts.Octave + PlacingCosts.OctaveOfJoined * (places.Length - 1));
        for (var i = 0; i < places.Length; i++)
        {
            var open = notes[chain.Notes[i]];
            if (FretFinder.On(open, number, octaves) is not var (place, more)) return null;
            places[i] = place;
            cost += more + CostOf(open, place);
        }
        if (notes[chain.Notes[0]] is { Home: { } home } first && home != number) cost += HasOwnPlace(first, home) ? PlacingCosts.AwayFromOwnPlace : PlacingCosts.AwayFromHome;
        return HasStoppedGlides(chain, places) ? new PlaceCandidate(number.Value, places, cost) : null;
    }

    private static bool HasOwnPlace(OpenNote open, StringNumber home) =>
        !open.Note.IsDead && open.Neck.Tuning.Has(home) && FretFinder.On(open, home, 0) is { } there && there.Place.Fret == open.OwnFret;

    private static double CostOf(OpenNote open, NotePlace place)
    {
        if (open.Note.IsDead || open.Note.Attack == Attack.Held || place.Harmonic is { Kind: HarmonicKind.Natural }) return 0;
        if (open.Home is null) return place.Fret.IsOpen ? PlacingCosts.OpenString : PlacingCosts.PerFret * place.Fret.Number;
        if (place.Fret.IsOpen) return open.WasOpen ? 0 : PlacingCosts.Opened;
        return (open.Home == place.String ? 0 : PlacingCosts.PerFret * place.Fret.Number)
            + (open.IsDrone ? PlacingCosts.DroneLost : open.WasOpen ? PlacingCosts.OpenLost : 0);
    }

    // A glide leaves a stopped string as well as it reaches one.
    private bool HasStoppedGlides(PlaceChain chain, NotePlace[] places)
    {
        for (var i = 1; i < places.Length; i++)
        {
            if (notes[chain.Notes[i]].Note.Attack is Attack.Glide or Attack.PickedGlide && places[i - 1].Fret.IsOpen && !notes[chain.Notes[i - 1]].WasOpen) return false;
        }
        return true;
    }
}
