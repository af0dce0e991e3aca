using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Finds strings that two strands of a bar would sound at the same time.</summary>
internal static class StringConflicts
{
    private readonly record struct Taken(Beats Start, Beats End, int Strand, TextSpan Span);

    public static void Check(DraftBar bar, DiagnosticBag problems)
    {
        if (bar.Strands.Length < 2) return;
        var strings = new Dictionary<StringNumber, List<Taken>>();
        for (var strand = 0; strand < bar.Strands.Length; strand++)
        {
            foreach (var draft in bar.Strands[strand].Events)
            {
                for (var n = 0; n < draft.Event.Notes.Count; n++)
                {
                    var number = draft.Event.Notes[n].String;
                    if (!strings.TryGetValue(number, out var taken)) strings[number] = taken = [];
                    taken.Add(new Taken(draft.Event.Start, draft.Event.End, strand, draft.SpanOfNote(n)));
                }
            }
        }
        foreach (var (number, taken) in strings) Check(number, taken, problems);
    }

    // Within a strand a string is free again when its next note comes, so only the note that lasts longest so far can be in the way.
    private static void Check(StringNumber number, List<Taken> taken, DiagnosticBag problems)
    {
        taken.Sort((a, b) => a.Start.CompareTo(b.Start));
        var longest = taken[0];
        foreach (var next in taken)
        {
            if (next.Start < longest.End && next.Strand != longest.Strand)
            {
                // The one that is written later is the one that finds the string taken.
                var later = next.Span.Start > longest.Span.Start ? next.Span : longest.Span;
                problems.Add(PlaceProblems.StringTakenByStrand(later, number.Value));
            }
            if (next.End > longest.End) longest = next;
        }
    }
}
