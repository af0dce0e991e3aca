using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Music;

namespace Fretlore.Hands.Retuning;

/// <summary>What a song is to be retuned to.</summary>
/// <param name="To">The new open strings, without capo.</param>
/// <param name="Parts">Indexes of the parts that are retuned; the others keep their tuning.</param>
/// <param name="Semitones">By how much the whole song is moved up; 0 keeps every pitch.</param>
/// <param name="Capo">The fret the capo goes to in the retuned parts; null leaves it where it is.</param>
/// <param name="Hand">The hand that is to play it.</param>
public sealed record RetuneOrder(Tuning To, ValueList<int> Parts, int Semitones = 0, int? Capo = null, HandSize Hand = HandSize.Average)
{
    internal Neck Moved(Neck neck) => neck with { Tuning = To, Capo = Capo ?? neck.Capo };
}
