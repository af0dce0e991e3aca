namespace Fretlore.Listening.Takes;

/// <summary>A recording of a player, as it is listened to: one channel at <see cref="Hertz"/>.</summary>
/// <param name="Samples">About -1 to 1.</param>
public sealed record Take(ReadOnlyMemory<float> Samples)
{
    /// <summary>Samples a second: enough for all a guitar's notes and the attack of its strings.</summary>
    public const int Hertz = 22050;

    public double Seconds => Samples.Length / (double)Hertz;
}

/// <summary>What became of a file that was to be listened to.</summary>
public abstract record TakeResult
{
    private TakeResult()
    {
    }

    /// <summary>It was read.</summary>
    public sealed record Read(Take Take) : TakeResult;

    /// <summary>It can't be listened to.</summary>
    /// <param name="Message">What is wrong, a whole sentence.</param>
    /// <param name="Remedy">What to do about it.</param>
    public sealed record Refused(string Message, string Remedy) : TakeResult;
}
