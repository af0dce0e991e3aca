using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>Something not to play.</summary>
public abstract record Avoided
{
    private Avoided()
    {
    }

    /// <summary>A note, in any octave.</summary>
    public sealed record Note(NoteName Name) : Avoided
    {
        public override string ToString() => Name.ToString();
    }

    /// <summary>Strings that sound unfretted.</summary>
    public sealed record OpenStrings : Avoided
    {
        public override string ToString() => "open strings";
    }

    /// <summary>Bends of a quarter tone and more.</summary>
    public sealed record Bends : Avoided
    {
        public override string ToString() => "bends";
    }

    /// <summary>Glides from note to note, into notes and out of them.</summary>
    public sealed record Slides : Avoided
    {
        public override string ToString() => "slides";
    }

    /// <summary>The same note twice in a row.</summary>
    public sealed record Repeats : Avoided
    {
        public override string ToString() => "repeats";
    }

    /// <summary>Neighbouring notes that are further apart.</summary>
    /// <param name="Size">The widest that is still allowed, in letters: 2 for a third, 7 for an octave.</param>
    public sealed record Leaps(int Size) : Avoided
    {
        private static readonly string[] Names = ["third", "fourth", "fifth", "sixth", "seventh", "octave"];

        /// <summary>The names that can be read, from a third up.</summary>
        public static ValueList<string> Words => Names.ToValueList();

        /// <summary>The widest that is still allowed, in semitones: the larger of a letter's two intervals, and perfect ones as they are.</summary>
        public int Semitones => Size switch { 2 => 4, 3 => 5, 4 => 7, 5 => 9, 6 => 11, _ => 12 };

        public override string ToString() => $"leaps over {(Size == 7 ? "an" : "a")} {Names[Size - 2]}";
    }
}
