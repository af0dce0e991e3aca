using CsCheck;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Hands;

/// <summary>The search against trying everything: the rules are said again here, in the plainest way.</summary>
public sealed class PlanSearchFacts
{
    private static readonly string[] Tunings = ["E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "G4 C4 E4 A4", "B1 E2 A2 D3 G3 B3 E4"];

    private const double MostWays = 60_000;

    [Fact]
    public void ThePlan_CostsWhatTheCheapestOfAllWaysCosts()
    {
        var (tried, moments) = (0, 0);
        Gen.Select(Gen.Int[0, 10_000_000], Gen.Int[0, 2]).Sample((seed, hand) =>
        {
            var random = new Random(seed);
            var song = Passage(random);
            var size = (HandSize)hand;
            var rules = new GripRules(NeckGeometry.Of(song.Parts[0].Neck), size);
            var table = new GripTable(rules);
            var read = MomentReader.Read(song.Bars, song.Parts[0].Bars, table).Moments;
            var layers = read.Select(moment => AllGrips(moment.Hold, rules)).ToList();
            for (var i = 0; i < layers.Count; i++)
            {
                Assert.Equal(layers[i].Select(Describe).Order(), table.Of(read[i].Hold).Select(Describe).Order());
            }
            if (layers.Count == 0 || layers.Aggregate(1.0, (ways, layer) => ways * Math.Max(1, layer.Count)) > MostWays) return;
            var found = new PlanSearch(rules, table).Find(read);
            Assert.Equal(Cheapest(layers, read, rules, 0, null, 0, double.MaxValue), found.Cost, 1e-6);
            Assert.Equal(found.Cost, Sum(found, read, rules), 1e-6);
            Interlocked.Increment(ref tried);
            Interlocked.Add(ref moments, read.Count);
        }, iter: 4000);
        Assert.True(tried > 2000, $"Only {tried} passages were small enough to try everything.");
        Assert.True(moments > 2 * tried);
    }

    // Short, with single notes and chords, slurs, glides, ties, ringing notes, bends and fingers from the sheet.
    private static Song Passage(Random random)
    {
        var builder = new SongBuilder { Tempo = new Tempo(new NoteValue(ValueBase.Quarter), random.Next(40, 220)) };
        var tuning = Tunings[random.Next(Tunings.Length)];
        var capo = random.Next(3) is > 0 and var fret && random.Next(2) == 0 ? Capo.Over(fret, new StringNumber(3), new StringNumber(2)) : random.Next(3);
        builder.Part("guitar", tuning, capo);
        var strings = tuning.Split(' ').Length;
        var centre = random.Next(1, 12);
        var events = Enumerable.Range(0, random.Next(2, 6)).Select(_ => random.Next(10) == 0 ? SongBuilder.Rest(ValueBase.Eighth) : One(random, strings, centre, capo)).ToArray();
        builder.Bar(events);
        return builder.Build();
    }

    private static Func<Neck, Event> One(Random random, int strings, int centre, Capo capo)
    {
        var count = random.Next(5) switch { 0 => 3, 1 => 2, _ => 1 };
        var places = Enumerable.Range(1, strings).OrderBy(_ => random.Next()).Take(count)
            .Select(s => (s, random.Next(6) == 0 ? 0 : centre + random.Next(random.Next(4) == 0 ? 9 : 5)))
            .Select(place => capo.IsBehind(new StringNumber(place.s), new Fret(place.Item2)) ? (place.s, 0) : place).ToArray();
        var value = random.Next(2) == 0 ? ValueBase.Eighth : ValueBase.Sixteenth;
        return SongBuilder.With(SongBuilder.Play(value, places), note => random.Next(12) switch
        {
            0 => note with { Attack = Attack.HammerOn },
            1 => note with { Attack = Attack.PullOff },
            2 => note with { Attack = Attack.Glide },
            3 => note with { Attack = Attack.Held },
            4 or 5 => note with { LetsRing = true },
            6 => note with { Bend = new Bend(0, [200]) },
            7 => note with { Finger = (Finger)random.Next(5) },
            8 => note with { Attack = Attack.Tap },
            _ => note,
        });
    }

    private static double Cheapest(List<List<Grip>> layers, IReadOnlyList<Moment> moments, GripRules rules, int at, Grip? before, double cost, double best)
    {
        if (cost >= best) return best;
        if (at == layers.Count) return cost;
        if (layers[at].Count == 0) return Cheapest(layers, moments, rules, at + 1, null, cost, best);
        foreach (var grip in layers[at])
        {
            var move = before is null ? 0 : MoveCost.Of(before, grip, moments[at], rules, []);
            best = Cheapest(layers, moments, rules, at + 1, grip, cost + move + GripCost.Of(grip, rules, []), best);
        }
        return best;
    }

    private static double Sum(FoundPlan plan, IReadOnlyList<Moment> moments, GripRules rules)
    {
        var cost = 0.0;
        for (var i = 0; i < plan.Grips.Length; i++)
        {
            if (plan.Grips[i] is not { } grip) continue;
            cost += GripCost.Of(grip, rules, []);
            if (i > 0 && plan.Grips[i - 1] is { } before) cost += MoveCost.Of(before, grip, moments[i], rules, []);
        }
        return cost;
    }

    // All ways to give each press one of five fingers, then the ones a hand can do.
    private static List<Grip> AllGrips(Hold hold, GripRules rules)
    {
        var grips = Possible(hold, rules, isBeyondReach: false).ToList();
        return grips.Count > 0 || hold.Presses.All(p => p.Stated is null) ? grips : [.. Possible(hold, rules, isBeyondReach: true)];
    }

    private static IEnumerable<Grip> Possible(Hold hold, GripRules rules, bool isBeyondReach)
    {
        var count = hold.Presses.Length;
        for (var code = 0; code < (int)Math.Pow(5, count); code++)
        {
            Finger[] fingers = [.. Enumerable.Range(0, count).Select(i => (Finger)(code / (int)Math.Pow(5, i) % 5))];
            if (!IsPossible(hold, fingers, rules, isBeyondReach)) continue;
            foreach (var position in Positions(hold, fingers)) yield return new Grip(hold, fingers, position, isBeyondReach);
        }
    }

    private static bool IsPossible(Hold hold, Finger[] fingers, GripRules rules, bool isBeyondReach)
    {
        for (var i = 0; i < fingers.Length; i++)
        {
            var a = hold.Presses[i];
            // The thumb only where the sheet says so.
            if (a.Stated is { } stated ? fingers[i] != stated : fingers[i] == Finger.Thumb) return false;
            for (var j = 0; j < fingers.Length; j++)
            {
                if (i == j) continue;
                var b = hold.Presses[j];
                var isLoose = isBeyondReach && a.Stated is not null && b.Stated is not null;
                if (fingers[i] == fingers[j])
                {
                    if (a.Fret != b.Fret) return false;
                    var most = fingers[i] switch { Finger.Thumb => 1, Finger.Middle or Finger.Little => 2, Finger.Ring => 4, _ => 99 };
                    if (!isLoose && Math.Abs(a.String - b.String) + 1 > most) return false;
                    // Nothing under the finger may have to sound lower.
                    var under = Enumerable.Range(Math.Min(a.String, b.String), Math.Abs(a.String - b.String) + 1);
                    if (under.Any(s => (hold.OpenStrings & 1 << s) != 0 || hold.Presses.Any(p => p.String == s && p.Fret < a.Fret))) return false;
                    // Nor does a finger lie across a partial capo, or behind it.
                    if (hold.Capo.IsPartial && a.Fret <= hold.Capo.Fret && under.Any(s => s <= hold.Capo.Lowest.Value && s >= hold.Capo.Highest.Value)) return false;
                    // What the finger holds anyway needs no other one.
                    if (Enumerable.Range(0, fingers.Length).Any(k => under.Contains(hold.Presses[k].String) && hold.Presses[k].Fret == a.Fret && fingers[k] != fingers[i])) return false;
                }
                else if (!isLoose && fingers[i] == Finger.Thumb)
                {
                    if (Math.Abs(a.Fret - b.Fret) > 3 || a.String < b.String) return false;
                }
                else if (!isLoose && fingers[i] < fingers[j])
                {
                    if (a.Fret > b.Fret || rules.Distance(a, b) > rules.Reach.Most(fingers[i], fingers[j])) return false;
                }
            }
        }
        return true;
    }

    private static HashSet<int> Positions(Hold hold, Finger[] fingers)
    {
        var used = fingers.Where(f => f != Finger.Thumb).Distinct().Order().ToList();
        if (used.Count == 0) return [Math.Max(1, hold.Presses[0].Fret)];
        var fret = hold.Presses[Array.IndexOf(fingers, used[0])].Fret;
        var positions = new HashSet<int> { Math.Max(1, fret - (int)used[0] + 1) };
        if (used[0] == Finger.Index) positions.Add(fret + 1);
        if (used[0] == Finger.Little && fret > 4) positions.Add(fret - 4);
        return positions;
    }

    private static string Describe(Grip grip) => $"{string.Join(' ', grip.Fingers)} at {grip.Position}, {grip.IsBeyondReach}";
}
