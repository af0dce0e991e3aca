using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Bars without the numbers of their notes, for saying whether two are the same.</summary>
internal static class BarText
{
    public static PartBar WithoutIds(PartBar bar) => bar with { Strands = bar.Strands.Select(WithoutIds).ToValueList() };

    private static Strand WithoutIds(Strand strand) => strand with
    {
        Events = strand.Events.Select(item => item with { Notes = WithoutIds(item.Notes), Graces = WithoutIds(item.Graces) }).ToValueList(),
    };

    private static ValueList<Note> WithoutIds(ValueList<Note> notes) => notes.Select(note => note with { Id = default }).ToValueList();
}
