using Fretlore.Binding.Problems;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Binding.Draft;

/// <summary>Checks that a bar fills its metre exactly and that nothing runs past it.</summary>
internal static class BarCheck
{
    /// <param name="bar">The bar.</param>
    /// <param name="meter">The metre it has where it stands.</param>
    /// <param name="name">What to call it in a sentence: "Bar 2 of furnace".</param>
    /// <param name="problems">Where findings go.</param>
    public static void Check(DraftBar bar, Meter meter, string name, DiagnosticBag problems)
    {
        if (bar.Kind != BarKind.Music || bar.IsBroken) return;
        if (bar.IsPickup) CheckPickup(bar, meter, problems);
        else if (bar.Length < meter.Length) problems.Add(TimeProblems.BarTooShort(bar.Span, name, meter.Length - bar.Length, meter));
        else if (bar.Length > meter.Length) problems.Add(TimeProblems.BarTooLong(bar.Span, name, bar.Length - meter.Length, meter));
        var length = bar.IsPickup ? bar.Length : meter.Length;
        foreach (var strand in bar.Strands)
        {
            if (strand.Kind == StrandKind.Main || strand.Events.Length == 0) continue;
            var end = strand.Events[^1].Event.End;
            if (end > length) problems.Add(TimeProblems.StrandPastBar(bar.Span, name, strand.Kind, end - length));
        }
    }

    private static void CheckPickup(DraftBar bar, Meter meter, DiagnosticBag problems)
    {
        if (bar.Length >= meter.Length) problems.Add(TimeProblems.UpbeatTooLong(bar.Span, meter));
        else if (bar.Length.IsZero) problems.Add(TimeProblems.EmptyUpbeat(bar.Span));
        else if ((bar.Length.Denominator & (bar.Length.Denominator - 1)) != 0) problems.Add(TimeProblems.UpbeatWithBrokenTuplet(bar.Span));
    }
}
