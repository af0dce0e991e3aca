using System.Globalization;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>A few values in a row that a rhythm is made of: <c>ESS</c>, <c>Q.E</c>; or a whole tuplet: <c>E:3</c>, <c>S:5/4</c>.</summary>
/// <param name="Values">Each note's value; in a tuplet one for each of its notes.</param>
/// <param name="Tuplet">The tuplet that all of them stand in, or null.</param>
public sealed record RhythmCell(ValueList<NoteValue> Values, Tuplet? Tuplet = null)
{
    public Beats Length
    {
        get
        {
            var length = Beats.Zero;
            foreach (var value in Values) length += value.Length;
            return Tuplet is { } tuplet ? length * tuplet.Factor : length;
        }
    }

    /// <summary>As a sheet has it.</summary>
    public override string ToString() => Tuplet is { } tuplet
        ? string.Create(CultureInfo.InvariantCulture, $"{Text(Values[0])}:{tuplet.Count}{(tuplet.InTimeOf == Music.Tuplet.UsualTimeOf(tuplet.Count) ? "" : $"/{tuplet.InTimeOf}")}")
        : string.Concat(Values.Select(Text));

    private static string Text(NoteValue value) => DensityRule.Letter(value.Base) + new string('.', value.Dots);
}
