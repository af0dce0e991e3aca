using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Lettering;

/// <summary>A note's degree as it stands below the tablature.</summary>
/// <param name="Text">Such as 5 or flat 7, its sign as <see cref="MixedText"/> draws it.</param>
/// <param name="Face">Bold for tones of the chord, plain for what is none, slanted where no chord sounds and the key's tonic counts.</param>
/// <param name="Width">How wide it is.</param>
internal sealed record DegreeLabel(string Text, Face Face, double Width);

/// <summary>The degrees that stand below notes and double stops; a chord of three strings or more has its symbol instead.</summary>
internal sealed class DegreeLabels(SongReading reading, Ink ink, bool areShown)
{
    public const double Size = HouseStyle.SmallSize;

    private const int MostTogether = 2;

    private readonly Dictionary<(string, Face), DegreeLabel> made = [];

    /// <summary>False when none are, so that there is nothing to go through the notes for.</summary>
    public bool AreShown => areShown && !reading.Roles.IsDefaultOrEmpty;

    /// <summary>The degrees of an event, low string first; empty where none are shown.</summary>
    public IEnumerable<(Note Note, DegreeLabel Label)> Of(Slot slot)
    {
        if (!AreShown || slot.Heads.Length > MostTogether) yield break;
        foreach (var head in slot.Heads)
        {
            if (!head.Note.IsDead && !head.Note.IsTiedFromBefore) yield return (head.Note, LabelOf(reading.Roles[head.Note.Id.Index]));
        }
    }

    /// <summary>Half of the widest degree of an event; 0 where none are shown.</summary>
    public double HalfWidth(Slot slot)
    {
        if (!AreShown) return 0;
        var widest = 0.0;
        foreach (var (_, label) in Of(slot)) widest = Math.Max(widest, label.Width);
        return widest / 2;
    }

    private DegreeLabel LabelOf(NoteRole role)
    {
        var text = role.Degree.ToDegree().Replace('b', '\u266D').Replace('#', '\u266F');
        var face = role.IsOfKey ? Face.SerifItalic : role.Kind == RoleKind.ChordTone ? Face.SansBold : Face.Sans;
        if (made.TryGetValue((text, face), out var label)) return label;
        return made[(text, face)] = new DegreeLabel(text, face, MixedText.Width(ink, text, Size, face));
    }
}
