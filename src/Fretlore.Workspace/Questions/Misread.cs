namespace Fretlore.Workspace.Questions;

/// <summary>Something typed that can't be understood: where, why, and what to type instead.</summary>
/// <param name="Input">What was typed.</param>
/// <param name="Column">Where in it, from 1.</param>
/// <param name="Length">How many characters; 0 for its end.</param>
/// <param name="Message">What is wrong, a whole sentence.</param>
/// <param name="Remedy">What to do, a whole sentence.</param>
public sealed record Misread(string Input, int Column, int Length, string Message, string Remedy);

/// <summary>What was asked for, or why the question can't be understood.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
public readonly record struct Answer<T>
{
    private readonly T? value;

    private Answer(T? value, Misread? misread) => (this.value, Misread) = (value, misread);

    public Misread? Misread { get; }

    /// <summary>What was asked for; only where <see cref="Misread"/> is null.</summary>
    public T Value => Misread is null ? value! : throw new InvalidOperationException(Misread.Message);

    public static implicit operator Answer<T>(T value) => new(value, null);

    public static implicit operator Answer<T>(Misread misread) => new(default, misread);
}
