using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Hands.Grips;

/// <summary>One place the fretting hand must hold.</summary>
/// <param name="String">1 is the highest.</param>
/// <param name="Fret">As written under the capo, above 0.</param>
/// <param name="Stated">The finger the sheet asks for, or null.</param>
/// <param name="BendCents">How far it is bent, 0 for not at all.</param>
/// <param name="IsTouched">Only touched, for a natural harmonic: no strength is needed, and a finger lies across strings at no cost.</param>
internal readonly record struct Press(int String, int Fret, Finger? Stated = null, int BendCents = 0, bool IsTouched = false);

/// <summary>What must sound at one moment as the fretting hand sees it.</summary>
/// <param name="Presses">From the low string (large number) to the high one, one a string.</param>
/// <param name="OpenStrings">Bit n is set where string n sounds open, so that no finger may lie on it.</param>
internal sealed record Hold(Press[] Presses, int OpenStrings)
{
    private readonly Capo capo;

    /// <summary>The partial capo that lies on the neck, which no finger lies across; a capo over all strings is no different from a nut.</summary>
    public Capo Capo
    {
        get => capo;
        init => capo = value.IsPartial ? value : default;
    }

    public bool Equals(Hold? other) => other is not null && OpenStrings == other.OpenStrings && capo == other.capo && Presses.AsSpan().SequenceEqual(other.Presses);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(OpenStrings);
        hash.Add(capo);
        foreach (var press in Presses) hash.Add(press);
        return hash.ToHashCode();
    }
}
