using Fretlore.Exchange.Reports;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Sees to it that the jumps of a file can be followed: one way back, and what it leads to.</summary>
internal static class JumpMarks
{
    /// <summary>Leaves out segnos beyond the first, and all marks where they lead nowhere.</summary>
    public static void Settle(List<Bar> bars, Remarks remarks)
    {
        for (var i = bars.FindIndex(b => b.IsSegno) + 1; i > 0 && i < bars.Count; i++)
        {
            if (!bars[i].IsSegno) continue;
            bars[i] = bars[i] with { IsSegno = false };
            remarks.Add(RemarkKind.LeftOut, "A second segno is not carried over.", null, i + 1);
        }
        if (CanBeFollowed(bars)) return;
        for (var i = 0; i < bars.Count; i++)
        {
            if (bars[i] is { Jump: Jump.None, IsSegno: false, IsCoda: false }) continue;
            bars[i] = bars[i] with { Jump = Jump.None, IsSegno = false, IsCoda = false };
            remarks.Add(RemarkKind.LeftOut, "A jump, segno or coda is not carried over, since the jumps of the file don't lead anywhere: write the bars out, or with `times`.", null, i + 1);
        }
    }

    private static bool CanBeFollowed(List<Bar> bars)
    {
        var back = bars.Where(b => b.Jump.GoesBack()).Select(b => b.Jump).ToList();
        if (back.Count == 0) return !bars.Exists(b => b.Jump != Jump.None || b.IsCoda);
        var jump = back[0];
        return back.Count == 1
            && (!jump.IsDalSegno() || bars.Exists(b => b.IsSegno))
            && bars.Exists(b => b.Jump == Jump.Fine) == jump.EndsAtFine()
            && bars.Exists(b => b.Jump == Jump.ToCoda) == jump.EndsAtCoda()
            && bars.Exists(b => b.IsCoda) == jump.EndsAtCoda();
    }
}
