using Fretlore.Exchange.Import;
using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Writes the rests of a line, so that tuplets are whole.</summary>
internal static class RestWriter
{
    /// <summary>Fills each bar in which a line has notes: the main line all through, others as far as the tuplets they begin and end in.</summary>
    public static void Fill(RawPart part, int voice, MidiBars bars, WrittenRhythm rhythm)
    {
        for (var bar = 0; bar < bars.All.Count; bar++)
        {
            var events = part.Bars[bar].Where(e => e.Voice == voice).OrderBy(e => e.Start).ToList();
            if (events.Count == 0) continue;
            var (start, end) = (Beats.Zero, bars.All[bar].Length);
            if (voice != LineMaker.Main)
            {
                start = IsDivided(bar, events[0].Start) ? Beats.Of(events[0].Start.WholeCount(Beats.Quarter)) : events[0].Start;
                var last = events[^1].End;
                end = last.Denominator > 1 && IsDivided(bar, last) ? Beats.Min(end, Beats.Of(last.WholeCount(Beats.Quarter) + 1)) : last;
            }
            foreach (var item in events)
            {
                Rest(bar, start, item.Start);
                start = item.End;
            }
            Rest(bar, start, end);
            Join(part.Bars[bar].Where(e => e.Voice == voice && e.Tuplet is not null));
        }

        // What a tuplet counts is the smallest value in it.
        static void Join(IEnumerable<RawEvent> divided)
        {
            foreach (var quarter in divided.GroupBy(e => e.Start.WholeCount(Beats.Quarter)))
            {
                var unit = quarter.Max(e => e.Value?.Base ?? ValueBase.Eighth);
                foreach (var item in quarter) item.Tuplet = item.Tuplet!.Value with { Unit = unit };
            }
        }

        bool IsDivided(int bar, Beats at) => !WrittenRhythm.IsPlain(rhythm.DivisionOf(bar, (int)at.WholeCount(Beats.Quarter)));

        void Rest(int bar, Beats from, Beats to)
        {
            foreach (var (start, value, tuplet, length) in EventPieces.Of(from, to, q => rhythm.DivisionOf(bar, q)))
                part.Bars[bar].Add(new RawEvent { Start = start, Duration = length, Value = value, Tuplet = tuplet, Voice = voice });
        }
    }
}
