using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>All that is played in a bar, to be compared with other bars.</summary>
/// <param name="Neck">The neck in this bar.</param>
/// <param name="Lines">Each strand: kind, start and spoken forms.</param>
internal sealed record BarForm(Neck Neck, ValueList<(StrandKind Kind, Beats Start, ValueList<Event> Events)> Lines)
{
    public int EventCount => Lines.Sum(l => l.Events.Count);

    /// <summary>The values alone.</summary>
    public ValueList<(NoteValue, Tuplet?)> Timing => Lines.SelectMany(l => l.Events).Select(e => (e.Value, e.Tuplet)).ToValueList();

    public static BarForm Of(PartBar bar) => new(bar.Neck, bar.Strands.Select(s =>
        (s.Kind, s.Start, s.Events.Select(e => SpokenForm.Of(e, Detail.NoteByNote)).ToValueList())).ToValueList());
}
