using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>A note with the string and fret it is played at.</summary>
internal readonly record struct PlacedNote(RawNote Note, StringNumber String, Fret Fret);

/// <summary>
/// Finds strings and frets for notes that have none: near where the hand is, low on the neck, on the string of the note before where
/// the two are joined, and never on a string that another line holds.
/// </summary>
/// <remarks>A simple rule, chord by chord: it does not look ahead.</remarks>
internal sealed class NeckPlacer(Remarks remarks, string part)
{
    private const double FirstPosition = 2;
    private const double OpenCost = 0.4;
    private const int MostTries = 5000;
    private const int WidestGrip = 4;

    private const string HeldString = "A note on a string that another line still holds.";

    private readonly Dictionary<int, (int Strand, Beats End)> busy = [];
    private readonly Dictionary<int, List<PlacedNote>> before = [];
    private double hand = FirstPosition;

    /// <summary>True when some note's place was chosen here.</summary>
    public bool HasChosen { get; private set; }

    public void StartBar() => busy.Clear();

    /// <summary>Places the notes of an event that begins now; those that can't be are left out and said.</summary>
    public List<PlacedNote> Place(RawEvent item, int strand, Neck neck, int bar)
    {
        var placed = new List<PlacedNote>();
        var open = new List<RawNote>();
        var joined = before.GetValueOrDefault(strand) ?? [];
        foreach (var number in busy.Where(b => b.Value.Strand == strand || b.Value.End <= item.Start).Select(b => b.Key).ToList()) busy.Remove(number);
        foreach (var note in item.Notes)
        {
            if (Stated(note, neck) is { } stated && !placed.Exists(p => p.String == stated.String))
            {
                if (busy.ContainsKey(stated.String.Value)) remarks.Add(RemarkKind.LeftOut, HeldString, part, bar + 1);
                else placed.Add(stated);
            }
            else if (note.Marks.Attack == Attack.Held && joined.Find(p => p.Note.Midi == note.Midi && !placed.Exists(q => q.String == p.String)) is { Note: not null } tied)
            {
                if (busy.ContainsKey(tied.String.Value)) remarks.Add(RemarkKind.LeftOut, HeldString, part, bar + 1);
                else placed.Add(tied with { Note = note });
            }
            else open.Add(note);
        }
        if (open.Count > 0) placed.AddRange(Choose(open, placed, joined, neck, bar));
        placed.Sort((a, b) => b.String.Value - a.String.Value);
        foreach (var note in placed) busy[note.String.Value] = (strand, item.End);
        before[strand] = placed;
        var fretted = placed.Where(p => !p.Fret.IsOpen).Select(p => p.Fret.Number).ToList();
        if (fretted.Count > 0) hand = 0.5 * hand + 0.5 * fretted.Average();
        return placed;
    }

    /// <summary>Places a grace note, on the string of the note it leads to where that goes.</summary>
    public PlacedNote? PlaceGrace(RawNote grace, List<PlacedNote> main, Neck neck, int bar)
    {
        if (Stated(grace, neck) is { } stated) return stated;
        HasChosen = true;
        foreach (var note in main.OrderBy(m => Math.Abs(m.Note.Midi - grace.Midi)))
        {
            if (FretOn(neck, note.String.Value, grace.Midi) is { } fret) return new PlacedNote(grace, note.String, fret);
        }
        for (var number = 1; number <= neck.StringCount; number++)
        {
            if (FretOn(neck, number, grace.Midi) is { } fret) return new PlacedNote(grace, new StringNumber(number), fret);
        }
        remarks.Add(RemarkKind.LeftOut, "A grace note that is not on the neck.", part, bar + 1);
        return null;
    }

    private static PlacedNote? Stated(RawNote note, Neck neck)
    {
        if (note.String is not { } number || number < 1 || number > neck.StringCount) return null;
        var harmonicFrets = note.Marks.Harmonic is null ? 0 : 12;
        if (note.Fret is { } fret && fret >= 0 && fret <= neck.HighestFret.Number + harmonicFrets) return new PlacedNote(note, new StringNumber(number), new Fret(fret));
        return note.Fret is null && FretOn(neck, number, note.Midi) is { } found ? new PlacedNote(note, new StringNumber(number), found) : null;
    }

    private static Fret? FretOn(Neck neck, int number, int midi)
    {
        var fret = midi - neck.Sounding(new StringNumber(number), Fret.Open).Midi;
        return fret >= 0 && fret <= neck.HighestFret.Number ? new Fret(fret) : null;
    }

    private List<PlacedNote> Choose(List<RawNote> notes, List<PlacedNote> fixedNotes, List<PlacedNote> joined, Neck neck, int bar)
    {
        HasChosen = true;
        var reachable = notes.Where(n => NeckChoice.Reaches(neck, n.Midi)).OrderByDescending(n => n.Midi).ToList();
        for (var missing = notes.Count - reachable.Count; missing > 0; missing--) remarks.Add(RemarkKind.LeftOut, "A note that is not on the neck.", part, bar + 1);
        var free = Enumerable.Range(1, neck.StringCount).Where(s => !busy.ContainsKey(s) && !fixedNotes.Exists(f => f.String.Value == s)).ToList();
        while (reachable.Count > 0)
        {
            var search = new Search(reachable, free, joined, neck, hand);
            if (search.Best is { } best) return best;
            // An inner note is missed least.
            reachable.RemoveAt(reachable.Count / 2);
            remarks.Add(RemarkKind.LeftOut, "A note for which no string is free.", part, bar + 1);
        }
        return [];
    }

    /// <summary>Tries strings for each note of a chord, the highest note first, and keeps the cheapest way.</summary>
    private sealed class Search
    {
        private readonly List<RawNote> notes;
        private readonly List<int> free;
        private readonly List<PlacedNote> joined;
        private readonly Neck neck;
        private readonly double hand;
        private readonly (int String, Fret Fret)[] chosen;
        private readonly HashSet<int> taken = [];
        private double lowest = double.MaxValue;
        private int tries;

        public Search(List<RawNote> notes, List<int> free, List<PlacedNote> joined, Neck neck, double hand)
        {
            (this.notes, this.free, this.joined, this.neck, this.hand) = (notes, free, joined, neck, hand);
            chosen = new (int, Fret)[notes.Count];
            if (notes.Count <= free.Count) Try(0, 0);
        }

        public List<PlacedNote>? Best { get; private set; }

        private void Try(int index, double cost)
        {
            if (cost >= lowest || (tries++ > MostTries && Best is not null)) return;
            if (index == notes.Count)
            {
                var fretted = chosen.Where(c => !c.Fret.IsOpen).Select(c => c.Fret.Number).ToList();
                var grip = fretted.Count > 0 ? fretted.Max() - fretted.Min() : 0;
                if (grip >= WidestGrip) cost += 6 * (grip - WidestGrip + 1);
                if (cost >= lowest) return;
                lowest = cost;
                Best = [.. chosen.Select((c, i) => new PlacedNote(notes[i], new StringNumber(c.String), c.Fret))];
                return;
            }
            foreach (var number in free)
            {
                if (taken.Contains(number) || FretOn(neck, number, notes[index].Midi) is not { } fret) continue;
                taken.Add(number);
                chosen[index] = (number, fret);
                Try(index + 1, cost + CostOf(notes[index], number, fret));
                taken.Remove(number);
            }
        }

        private double CostOf(RawNote note, int number, Fret fret)
        {
            var cost = fret.IsOpen ? OpenCost : Math.Abs(fret.Number - hand) + 0.05 * fret.Number;
            var needsString = note.Marks.Attack is Attack.HammerOn or Attack.PullOff or Attack.Glide or Attack.PickedGlide;
            if (needsString && joined.Count > 0 && !joined.Exists(j => j.String.Value == number)) cost += 30;
            return cost;
        }
    }
}
