using System.Collections.Concurrent;

namespace Fretlore.Sound.Pieces;

/// <summary>What was made of pieces before, with all it depends on. Several threads may use it.</summary>
/// <param name="keeps">True when it is kept for the next time.</param>
internal sealed class PieceMemo(bool keeps)
{
    private readonly ConcurrentDictionary<(string What, int Piece, object Of), (object Key, object Made, int Round)> made = new();
    private int round;

    public bool Keeps => keeps;

    /// <summary>What was made from the same key, or else made now.</summary>
    public T Once<T>((string What, int Piece, object Of) name, object key, Func<T> make)
        where T : notnull
    {
        if (Has(name, key)) return Get<T>(name)!;
        var now = make();
        Set(name, key, now);
        return now;
    }

    public bool Has((string What, int Piece, object Of) name, object key)
    {
        if (!made.TryGetValue(name, out var found) || !found.Key.Equals(key)) return false;
        made[name] = found with { Round = round };
        return true;
    }

    public T? Get<T>((string What, int Piece, object Of) name) => made.TryGetValue(name, out var found) ? (T)found.Made : default;

    public void Set((string What, int Piece, object Of) name, object key, object now) => made[name] = (key, now, round);

    public void Forget((string What, int Piece, object Of) name) => made.TryRemove(name, out _);

    /// <summary>Forgets what was not asked for since the last time.</summary>
    public void EndRound()
    {
        foreach (var (name, one) in made)
        {
            if (one.Round < round) made.TryRemove(name, out _);
        }
        round++;
    }
}
