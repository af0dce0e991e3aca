using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Alternatives;

/// <summary>Puts all notes of a passage within a few frets.</summary>
/// <remarks>
/// Moment by moment, each on the string nearest to the one before; strings that still sound are left alone, what is slurred, glided or tied stays on one
/// string. Passages with natural harmonics, dead notes, taps or trills belong where they are.
/// </remarks>
internal sealed class WindowPlacer
{
    /// <summary>Frets beyond the lowest one that fingers come to without a shift: four fingers, and a stretch of one.</summary>
    public const int Reach = 4;

    // Open strings ring at the pace of a low position only.
    private const int HighestWithOpen = 5;

    private readonly Neck neck;
    private readonly int low;
    private readonly Dictionary<NoteId, (StringNumber String, Fret Fret)> places = [];

    // For each string of the passage as written, the string its last note has gone to.
    private readonly Dictionary<int, int> movedTo = [];
    private readonly double[] busyUntil = new double[16];
    private double middle = -1;

    private WindowPlacer(Neck neck, int low) => (this.neck, this.low) = (neck, low);

    private readonly record struct Onset(Beats At, Beats End, Note Note);

    /// <summary>For each note its place; null where they don't all fit.</summary>
    public static IReadOnlyDictionary<NoteId, (StringNumber String, Fret Fret)>? Place(ValueList<PartBar> content, Neck neck, int low)
    {
        var onsets = new List<Onset>();
        var start = Beats.Zero;
        foreach (var bar in content)
        {
            var end = start;
            foreach (var item in bar.Strands.SelectMany(s => s.Events))
            {
                if (item.Graces.Count > 0 || item.Notes.Items.Any(n => n.IsDead || n.Harmonic is not null || n.Attack == Attack.Tap || n.Trill is not null)) return null;
                foreach (var note in item.Notes) onsets.Add(new Onset(start + item.Start, start + item.End, note));
                if (start + item.End > end) end = start + item.End;
            }
            start = end;
        }
        var placer = new WindowPlacer(content.Count > 0 ? content[0].Neck : neck, low);
        return onsets.Count > 0 && onsets.OrderBy(o => o.At).GroupBy(o => o.At).All(moment => placer.Add([.. moment])) ? placer.places : null;
    }

    private bool Add(Onset[] moment)
    {
        var best = new int[moment.Length];
        var chosen = new int[moment.Length];
        var cost = double.MaxValue;
        Choose(moment, 0, 0, 0, chosen, best, ref cost);
        if (cost == double.MaxValue) return false;
        for (var i = 0; i < moment.Length; i++)
        {
            var (note, number) = (moment[i].Note, new StringNumber(best[i]));
            places[note.Id] = (number, neck.FretOf(number, note.Sounding)!.Value);
            movedTo[note.String.Value] = best[i];
            busyUntil[best[i]] = moment[i].End.ToDouble();
        }
        middle = best.Average();
        return true;
    }

    private void Choose(Onset[] moment, int at, int taken, double sum, int[] chosen, int[] best, ref double cost)
    {
        if (sum >= cost) return;
        if (at == moment.Length)
        {
            cost = sum;
            chosen.CopyTo(best, 0);
            return;
        }
        var (note, from) = (moment[at].Note, moment[at].At.ToDouble());
        var isJoined = note.Attack is Attack.HammerOn or Attack.PullOff or Attack.Glide or Attack.PickedGlide or Attack.Held;
        for (var number = 1; number <= neck.StringCount; number++)
        {
            if ((taken >> number & 1) != 0) continue;
            if (isJoined && movedTo.TryGetValue(note.String.Value, out var before) ? before != number : busyUntil[number] > from) continue;
            if (neck.FretOf(new StringNumber(number), note.Sounding) is not { Number: var fret }) continue;
            var isIn = fret >= low && fret <= low + Reach;
            if (!isIn && !(fret == 0 && low <= HighestWithOpen && note.Bend is null)) continue;
            var away = middle < 0 ? 0 : Math.Abs(number - middle);
            // The stretch is for where there is no other way.
            chosen[at] = number;
            Choose(moment, at + 1, taken | 1 << number, sum + away + (fret == low + Reach ? 1 : 0), chosen, best, ref cost);
        }
    }
}
