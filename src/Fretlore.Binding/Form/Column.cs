using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Binding.Form;

/// <summary>What all parts share in one bar of the song as played, before repeats are found.</summary>
internal sealed record Column
{
    public required Meter Meter { get; init; }

    public required Key? Key { get; init; }

    public required Beats Length { get; init; }

    public required bool IsPickup { get; init; }

    /// <summary>Tempo marks written in this bar.</summary>
    public ValueList<TempoMark> Tempos { get; init; }

    /// <summary>The tempo in force at its first beat, a mark there included.</summary>
    public required Tempo StartTempo { get; init; }

    /// <summary>The tempo in force at its end.</summary>
    public Tempo EndTempo => Tempos.Count > 0 ? Tempos[^1].Tempo : StartTempo;

    /// <summary>Its tempo marks with one for its first beat, written there or not.</summary>
    public ValueList<TempoMark> TemposWithStart =>
        Tempos.Count > 0 && Tempos[0].At.IsZero ? Tempos : Tempos.Prepend(new TempoMark(Beats.Zero, StartTempo)).ToValueList();

    public required Feel Feel { get; init; }

    /// <summary>True when the feel is written here.</summary>
    public bool ChangesFeel { get; init; }

    public BarLine EndLine { get; init; }

    public bool IsSegno { get; init; }

    public bool IsCoda { get; init; }

    public Jump Jump { get; init; }

    /// <summary>True when the two bars go the same way, whether or not what holds in them is written there.</summary>
    public bool IsPlayedLike(Column other) =>
        Meter == other.Meter && Key == other.Key && Length == other.Length && IsPickup == other.IsPickup && StartTempo == other.StartTempo
        && Feel == other.Feel && (Tempos.Count + other.Tempos.Count == 0 || Later(Tempos).SequenceEqual(Later(other.Tempos)));

    private static IEnumerable<TempoMark> Later(ValueList<TempoMark> marks) => marks.Where(m => !m.At.IsZero);
}
