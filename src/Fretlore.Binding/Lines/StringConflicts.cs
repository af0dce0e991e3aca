using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Finds strings that two strands of a bar would sound at the same time.</summary>
internal static class StringConflicts
{
    public static void Check(DraftBar bar, DiagnosticBag problems)
    {
        if (bar.Strands.Length < 2) return;
        var taken = new Dictionary<StringNumber, List<(Beats Start, Beats End, int Strand, TextSpan Span)>>();
        for (var strand = 0; strand < bar.Strands.Length; strand++)
        {
            foreach (var draft in bar.Strands[strand].Events)
            {
                for (var n = 0; n < draft.Event.Notes.Count; n++)
                {
                    var number = draft.Event.Notes[n].String;
                    if (!taken.TryGetValue(number, out var times)) taken[number] = times = [];
                    var (start, end, span) = (draft.Event.Start, draft.Event.End, draft.SpanOfNote(n));
                    times.Add((start, end, strand, span));
                    foreach (var other in times)
                    {
                        if (other.Strand == strand || other.Start >= end || other.End <= start) continue;
                        // The one that is written later is the one that finds the string taken.
                        problems.Add(PlaceProblems.StringTakenByStrand(span.Start > other.Span.Start ? span : other.Span, number.Value));
                        break;
                    }
                }
            }
        }
    }
}
