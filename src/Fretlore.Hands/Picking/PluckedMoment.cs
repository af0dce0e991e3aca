using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Picking;

/// <summary>One string that is plucked.</summary>
/// <param name="Note">The note.</param>
/// <param name="IsBass">True in the bass strand.</param>
/// <param name="Stated">The finger the sheet says, or null.</param>
internal readonly record struct Plucked(Note Note, bool IsBass, char? Stated);

/// <summary>Strings that are plucked together.</summary>
/// <param name="Strings">From the low string to the high one; at least one.</param>
/// <param name="Stated">The stroke the sheet says, or none.</param>
/// <param name="IsOnBeat">True at the start of a beat.</param>
/// <param name="SwingsDown">True where the hand swings down: at even places of the smallest value around.</param>
/// <param name="SinceBefore">Seconds since the moment before began; a second for the first.</param>
internal sealed record PluckedMoment(ImmutableArray<Plucked> Strings, Stroke Stated, bool IsOnBeat, bool SwingsDown, double SinceBefore)
{
    private const double FirstSince = 1;

    public int LowString => Strings[0].Note.String.Value;

    public int HighString => Strings[^1].Note.String.Value;

    /// <summary>The moments of a part or riff in written order; grace notes have their own.</summary>
    public static List<PluckedMoment> Read(ValueList<Bar> bars, ValueList<PartBar> content)
    {
        var moments = new List<PluckedMoment>();
        var (tempo, start, last) = (Tempo.Default, 0.0, -FirstSince);
        for (var i = 0; i < content.Count; i++)
        {
            var clock = new BarClock(bars[i], tempo, start);
            var events = content[i].Strands.SelectMany(s => s.Events.Select(e => (Strand: s.Kind, Item: e))).ToList();
            foreach (var together in events.GroupBy(e => e.Item.Start).OrderBy(g => g.Key))
            {
                var at = clock.Seconds(together.Key);
                var smallest = events.Where(e => Beat(e.Item.Start) == Beat(together.Key)).Select(e => Grid(e.Item)).Max();
                foreach (var (strand, item) in together)
                {
                    foreach (var grace in item.Graces.Items.Where(IsPlucked))
                    {
                        moments.Add(new PluckedMoment([new Plucked(grace, strand == StrandKind.Bass, null)], Stroke.None, IsOnBeat: false, SwingsDown: true, Math.Max(0.02, at - last - 0.08)));
                        last = at - 0.08;
                    }
                }
                var strings = together.SelectMany(e => e.Item.Notes.Items.Where(IsPlucked).Select(n => new Plucked(n, e.Strand == StrandKind.Bass, e.Item.PickingFinger)))
                    .OrderByDescending(p => p.Note.String.Value).ToImmutableArray();
                if (strings.IsEmpty) continue;
                var stated = together.Select(e => e.Item.Stroke).FirstOrDefault(s => s != Stroke.None);
                var place = together.Key.Modulo(Beats.Quarter) * Beats.Of(smallest);
                moments.Add(new PluckedMoment(strings, stated, together.Key.Modulo(Beats.Quarter).IsZero, place.Denominator != 1 || place.Numerator % 2 == 0, at - last));
                last = at;
            }
            (tempo, start) = (clock.LastTempo, clock.Seconds(bars[i].Length));
        }
        return moments;
    }

    private static long Beat(Beats at) => at.WholeCount(Beats.Quarter);

    // How many of the event's value make a quarter note; dots and longer values count as the whole beat.
    private static long Grid(Event item) => item.Tuplet is null ? Math.Max(1, (long)item.Value.Base / 4) : 1;

    private static bool IsPlucked(Note note) => note.Attack is Attack.Picked or Attack.PickedGlide;
}
