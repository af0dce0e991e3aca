using System.Globalization;

namespace Fretlore.Exchange.Reports;

/// <summary>What became of something on its way in or out.</summary>
public enum RemarkKind
{
    /// <summary>It is not in the result.</summary>
    LeftOut,

    /// <summary>It is there in another form.</summary>
    Changed,

    /// <summary>It was not said and has been worked out.</summary>
    Guessed,
}

/// <summary>One thing that was not carried over as it was, with its place.</summary>
/// <param name="Kind">Left out, changed or guessed.</param>
/// <param name="Text">A sentence for the reader.</param>
/// <param name="Part">The part's title, or null for the whole song.</param>
/// <param name="Bar">The bar's place in the file, from 1, or null.</param>
/// <param name="Line">The line of a text file, from 1, or null.</param>
public sealed record Remark(RemarkKind Kind, string Text, string? Part = null, int? Bar = null, int? Line = null)
{
    /// <summary>For example <c>bar 3 of Lead guitar</c>; empty for the whole song.</summary>
    public string Place => string.Join(" of ", new[]
    {
        Line is { } line ? "line " + line.ToString(CultureInfo.InvariantCulture) : Bar is { } bar ? "bar " + bar.ToString(CultureInfo.InvariantCulture) : "",
        Part ?? "",
    }.Where(w => w.Length > 0));

    public override string ToString() => Place.Length > 0 ? $"{Place}: {Text}" : Text;
}
