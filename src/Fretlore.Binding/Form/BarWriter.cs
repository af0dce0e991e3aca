using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Binding.Form;

/// <summary>Makes written bars from columns and the plan of repeats.</summary>
internal static class BarWriter
{
    public static ValueList<Bar> Write(IReadOnlyList<Column> columns, WrittenPlan plan)
    {
        var bars = ImmutableArray.CreateBuilder<Bar>(plan.Bars.Length);
        var number = 0;
        for (var i = 0; i < plan.Bars.Length; i++)
        {
            var written = plan.Bars[i];
            var column = columns[written.Column];
            if (!column.IsPickup) number++;
            var isDouble = column.EndLine == BarLine.Double;
            foreach (var other in written.OtherColumns) isDouble |= columns[other].EndLine == BarLine.Double;
            // Of a repeat's passes the last one jumps.
            var jump = written.OtherColumns.IsEmpty ? column.Jump : columns[written.OtherColumns[^1]].Jump;
            bars.Add(new Bar
            {
                Number = number,
                Meter = column.Meter,
                Key = column.Key,
                Length = column.Length,
                IsPickup = column.IsPickup,
                Tempos = Restates(written, i, static (before, here) => before.EndTempo != here.StartTempo) ? column.TemposWithStart : column.Tempos,
                FeelChange = column.ChangesFeel || Restates(written, i, static (before, here) => before.Feel != here.Feel) ? column.Feel : null,
                StartsRepeat = written.StartsRepeat,
                RepeatCount = written.RepeatCount,
                EndingPasses = new(written.EndingPasses),
                StartsEnding = written.StartsEnding,
                EndsEnding = written.EndsEnding,
                EndLine = i == plan.Bars.Length - 1 || jump == Jump.Fine ? BarLine.Final : isDouble || jump.GoesBack() ? BarLine.Double : BarLine.Single,
                IsSegno = column.IsSegno,
                IsCoda = column.IsCoda,
                Jump = jump,
            });
        }
        return new(bars.MoveToImmutable());

        // What was written in another pass or ending is written again, so that a bar is read right from the bar before it on the page
        // and from each bar it is ever played after.
        bool Restates(WrittenBar written, int index, Func<Column, Column, bool> differs)
        {
            var here = columns[written.Column];
            if (index > 0 && differs(columns[plan.Bars[index - 1].Column], here)) return true;
            if (written.Column > 0 && differs(columns[written.Column - 1], here)) return true;
            foreach (var other in written.OtherColumns)
            {
                if (other > 0 && differs(columns[other - 1], here)) return true;
            }
            return false;
        }
    }

    /// <summary>Numbers the bars of one part, and keeps "again" signs only where the bar they point to is the one on the page.</summary>
    public static ValueList<PartBar> Write(IReadOnlyList<DraftBar> played, WrittenPlan plan, NoteNumbering notes)
    {
        var drafts = new DraftBar[plan.Bars.Length];
        for (var i = 0; i < drafts.Length; i++) drafts[i] = played[plan.Bars[i].Column];
        for (var i = 0; i < drafts.Length; i++)
        {
            if (drafts[i].Repeats == 0) continue;
            var back = drafts[i].Repeats;
            var last = Math.Min(i + back, drafts.Length) - 1;
            var holds = last - i + 1 == back;
            for (var b = i; b <= last && holds; b++)
            {
                var isApart = plan.Bars[b].StartsRepeat || plan.Bars[b].StartsEnding;
                holds = !isApart && drafts[b].Repeats == back && b >= back && drafts[b].HasSameMusicAs(drafts[b - back]);
            }
            if (holds) i = last;
            else drafts[i] = drafts[i] with { Repeats = 0 };
        }
        var bars = ImmutableArray.CreateBuilder<PartBar>(drafts.Length);
        var events = 0;
        foreach (var draft in drafts) events += draft.EventCount;
        notes.Expect(events);
        foreach (var draft in drafts) bars.Add(notes.Number(draft));
        return new(bars.MoveToImmutable());
    }
}
