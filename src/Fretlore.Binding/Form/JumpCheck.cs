using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>Sees to it that each jump leads somewhere, and that each place to jump to is jumped to.</summary>
internal sealed class JumpCheck(DiagnosticBag problems)
{
    private readonly List<(Change Mark, TextSpan Span, int Column)> marks = [];

    /// <summary>Takes in the marks of one bar.</summary>
    public void Add(IEnumerable<Source> sources, int column)
    {
        foreach (var source in sources)
        {
            if (source.Change.Change is not (SegnoMark or CodaMark or JumpMark)) continue;
            // Two parts may both say it, and passes of a repeat come from one place.
            if (marks.Exists(m => m.Mark == source.Change.Change && (m.Column == column || m.Span == source.Change.Span))) continue;
            marks.Add((source.Change.Change, source.Change.Span, column));
        }
    }

    public void Report()
    {
        var back = marks.Where(m => m.Mark is JumpMark { Jump: var jump } && jump.GoesBack()).ToList();
        foreach (var (_, span, _) in back.Skip(1)) problems.Add(FormProblems.TwoOfOneKind(span, "jump back"));
        var jump = back.Count > 0 ? ((JumpMark)back[0].Mark).Jump : Jump.None;
        Seen(m => m is SegnoMark, "segno", "D.S.", jump.IsDalSegno());
        Seen(m => m is CodaMark, "coda", "D.S. al coda", jump.EndsAtCoda());
        Seen(m => m is JumpMark { Jump: Jump.ToCoda }, "`to coda`", "D.S. al coda", jump.EndsAtCoda());
        Seen(m => m is JumpMark { Jump: Jump.Fine }, "fine", "D.C. al fine", jump != Jump.None && !jump.EndsAtCoda());
        if (back.Count == 0) return;
        var (from, span0) = (back[0].Column, back[0].Span);
        if (jump.IsDalSegno() && !marks.Exists(m => m.Mark is SegnoMark && m.Column <= from)) problems.Add(FormProblems.NowhereToJump(span0, "segno"));
        if (jump.EndsAtFine() && !marks.Exists(m => m.Mark is JumpMark { Jump: Jump.Fine })) problems.Add(FormProblems.NowhereToJump(span0, "fine"));
        if (!jump.EndsAtCoda()) return;
        if (!marks.Exists(m => m.Mark is JumpMark { Jump: Jump.ToCoda })) problems.Add(FormProblems.NowhereToJump(span0, "to coda"));
        if (!marks.Exists(m => m.Mark is CodaMark && m.Column > from)) problems.Add(FormProblems.NowhereToJump(span0, "coda"));
    }

    private void Seen(Func<Change, bool> isOne, string sign, string jump, bool isUsed)
    {
        var found = marks.Where(m => isOne(m.Mark)).ToList();
        foreach (var (_, span, _) in found.Skip(1)) problems.Add(FormProblems.TwoOfOneKind(span, sign));
        if (found.Count > 0 && !isUsed) problems.Add(FormProblems.NeverJumpedTo(found[0].Span, sign, jump));
    }
}
