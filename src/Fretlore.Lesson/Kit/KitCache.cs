using System.Collections.Concurrent;
using Fretlore.Engraving.Layout.Reuse;
using Fretlore.Sound.Output;

namespace Fretlore.Lesson.Kit;

/// <summary>What was made for the last kit of a sheet, to be used again where what it was made from has not changed.</summary>
/// <remarks>Inputs are compared by value. One kit at a time may be made with a cache, by several threads.</remarks>
public sealed class KitCache : IDisposable
{
    private readonly ConcurrentDictionary<string, (object Input, object Made)> made = new(StringComparer.Ordinal);

    private bool isSoundQuick;

    /// <summary>Whether sound of an earlier sheet may stand in for sound that would take long to make.</summary>
    public bool TakesOldSound { get; set; }

    /// <summary>Whether it did, in the last kit.</summary>
    public bool TookOldSound { get; private set; }

    /// <summary>What the last layout of the whole song leaves for the next.</summary>
    internal EarlierLayout Layout { get; set; } = EarlierLayout.Empty;

    /// <summary>What the last writing of the song's sound leaves for the next.</summary>
    internal EarlierSound Sound { get; } = new();

    /// <summary>Lets go of the streams that sound was worked out in.</summary>
    public void Dispose() => Sound.Dispose();

    /// <summary>Whether a kit with sound was made before.</summary>
    internal bool HasSound => made.ContainsKey("sound");

    /// <summary>A new kit begins.</summary>
    /// <param name="isQuick">Tells whether little of the song's sound has changed: then it is not old sound that is taken.</param>
    internal void Begin(Func<EarlierSound, bool> isQuick) => (TookOldSound, isSoundQuick) = (false, TakesOldSound && isQuick(Sound));

    /// <summary>What was made from the same input last time, or else made now.</summary>
    /// <param name="what">What it is.</param>
    /// <param name="input">All it depends on.</param>
    /// <param name="make">Makes it.</param>
    /// <param name="isSound">Whether it takes long and may be late.</param>
    internal T Get<T>(string what, object input, Func<T> make, bool isSound = false)
        where T : notnull
    {
        if (made.TryGetValue(what, out var last))
        {
            if (last.Input.Equals(input)) return (T)last.Made;
            if (isSound && TakesOldSound && !isSoundQuick)
            {
                TookOldSound = true;
                return (T)last.Made;
            }
        }
        var now = make();
        made[what] = (input, now);
        return now;
    }
}
