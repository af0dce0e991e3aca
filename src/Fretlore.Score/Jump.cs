namespace Fretlore.Score;

/// <summary>What a player does at the end of a bar, besides going on (common practice).</summary>
public enum Jump : byte
{
    None,

    /// <summary>The end, once a jump that leads to it has been made.</summary>
    Fine,

    /// <summary>On to the coda, once a jump that leads to it has been made.</summary>
    ToCoda,

    /// <summary>Back to the start, and on to the end.</summary>
    DaCapo,

    /// <summary>Back to the start, and on to the Fine.</summary>
    DaCapoAlFine,

    /// <summary>Back to the start, and from "To Coda" to the coda.</summary>
    DaCapoAlCoda,

    /// <summary>Back to the segno, and on to the end.</summary>
    DalSegno,

    /// <summary>Back to the segno, and on to the Fine.</summary>
    DalSegnoAlFine,

    /// <summary>Back to the segno, and from "To Coda" to the coda.</summary>
    DalSegnoAlCoda,
}

/// <summary>What a jump is, asked in words.</summary>
public static class Jumps
{
    /// <summary>Back to the start.</summary>
    public static bool IsDaCapo(this Jump jump) => jump is Jump.DaCapo or Jump.DaCapoAlFine or Jump.DaCapoAlCoda;

    /// <summary>Back to the segno.</summary>
    public static bool IsDalSegno(this Jump jump) => jump is Jump.DalSegno or Jump.DalSegnoAlFine or Jump.DalSegnoAlCoda;

    /// <summary>Back to an earlier place, as against on to a later one.</summary>
    public static bool GoesBack(this Jump jump) => jump.IsDaCapo() || jump.IsDalSegno();

    public static bool EndsAtFine(this Jump jump) => jump is Jump.DaCapoAlFine or Jump.DalSegnoAlFine;

    public static bool EndsAtCoda(this Jump jump) => jump is Jump.DaCapoAlCoda or Jump.DalSegnoAlCoda;
}
