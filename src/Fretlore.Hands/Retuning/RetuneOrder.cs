using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Music;

namespace Fretlore.Hands.Retuning;

/// <summary>What a song is to be retuned to.</summary>
/// <param name="To">The new open strings, without capo.</param>
/// <param name="Parts">Indexes of the parts that are retuned; the others keep their tuning.</param>
/// <param name="Semitones">By how much the whole song is moved up; 0 keeps every pitch.</param>
/// <param name="Capo">Where the capo goes in the retuned parts; null leaves it where it is, a partial one on the strings that take the place of its own.</param>
/// <param name="Hand">The hand that is to play it.</param>
public sealed record RetuneOrder(Tuning To, ValueList<int> Parts, int Semitones = 0, Capo? Capo = null, HandSize Hand = HandSize.Average)
{
    /// <summary>The neck in the new tuning. A partial capo that would lie on strings apart, on none or on all is taken off.</summary>
    public Neck Moved(Neck neck) => neck with { Tuning = To, Capo = Capo ?? (neck.Capo.IsPartial ? Along(neck.Capo, neck.Tuning) : neck.Capo) };

    private Guitar.Capo Along(Guitar.Capo capo, Tuning from)
    {
        var home = HomeStrings.Of(from, To, Semitones);
        var low = home[capo.Lowest.Value];
        var high = home[capo.Highest.Value];
        // Strings keep their order, so that those between lie between.
        var covers = low - high == capo.Lowest.Value - capo.Highest.Value;
        return low > 0 && high > 0 && covers && low - high + 1 < To.StringCount ? Guitar.Capo.Over(capo.Fret, new StringNumber(low), new StringNumber(high)) : Guitar.Capo.Off;
    }
}
