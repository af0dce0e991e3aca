using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>Ways to a note.</summary>
public enum ApproachKind
{
    /// <summary>Bent up to from the note fretted.</summary>
    Bend,

    /// <summary>Slid into.</summary>
    Slide,

    HammerOn,

    PullOff,

    /// <summary>The note before is a step, or a named note, away.</summary>
    Step,
}

/// <summary>The side a note is reached from.</summary>
public enum Side
{
    Below,
    Above,
}

/// <summary>How a note is reached.</summary>
/// <param name="Kind">Bend, slide and so on.</param>
/// <param name="Semitones">1 for a half step, 2 for a whole step; null for either.</param>
/// <param name="From">The note it comes from: the one fretted for a bend, else the one before; null for any.</param>
/// <param name="Side">From below or above; null for either. A bend and a hammer-on come from below, a pull-off from above.</param>
public sealed record Approach(ApproachKind Kind, int? Semitones = null, NoteName? From = null, Side? Side = null)
{
    /// <summary>As a sheet has it: <c>by a half-step bend of G#</c>, <c>by a slide from below</c>, <c>from a half step below</c>.</summary>
    public override string ToString()
    {
        var side = Side is { } s ? s.ToString().ToLowerInvariant() : null;
        var from = From is { } note ? $" from {note}" : side is null ? "" : $" from {side}";
        return Kind switch
        {
            ApproachKind.Bend => $"by a {Size("-")}bend" + (From is { } bent ? $" of {bent}" : ""),
            ApproachKind.Slide => "by a slide" + from,
            ApproachKind.HammerOn => "by a hammer-on" + from,
            ApproachKind.PullOff => "by a pull-off" + from,
            _ => From is { } before ? $"from {before}" : $"from a {Size(" ")}{(Semitones is null ? "step " : "")}{side}",
        };
    }

    // "half-step bend", "half step below"
    private string Size(string joint) => Semitones switch { 1 => $"half{joint}step ", 2 => $"whole{joint}step ", _ => "" };
}
