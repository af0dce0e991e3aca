using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Spans that can also be switched on and off.</summary>
internal enum SpanKind
{
    PalmMute,
    LetRing,
    TremoloPicking,
    TremoloArm,
    Wah,
    Crescendo,
    Diminuendo,
}

/// <summary>The spans, strokes and picking fingers in force at a place of the walk.</summary>
internal sealed class PlayFlags
{
    private readonly int[] open = new int[(int)SpanKind.Diminuendo + 1];
    private readonly SyntaxToken?[] switchedOn = new SyntaxToken?[(int)SpanKind.Diminuendo + 1];

    /// <summary>Strokes that alternate, such as <c>du</c>; empty for none.</summary>
    public Cycle Strokes { get; set; } = Cycle.None;

    public Cycle Fingers { get; set; } = Cycle.None;

    public static SpanKind? KindOf(string word) => word switch
    {
        "pm" => SpanKind.PalmMute,
        "let" => SpanKind.LetRing,
        "trem" => SpanKind.TremoloPicking,
        "arm" => SpanKind.TremoloArm,
        "wah" => SpanKind.Wah,
        "cresc" => SpanKind.Crescendo,
        "dim" => SpanKind.Diminuendo,
        _ => null,
    };

    public bool Has(SpanKind kind) => open[(int)kind] > 0 || switchedOn[(int)kind] is not null;

    public void Open(SpanKind kind) => open[(int)kind]++;

    public void Close(SpanKind kind) => open[(int)kind]--;

    /// <summary>Turns a span on or off; false when it was so already.</summary>
    public bool Switch(SpanKind kind, SyntaxToken word, bool on)
    {
        if (switchedOn[(int)kind] is not null == on) return false;
        switchedOn[(int)kind] = on ? word : null;
        return true;
    }

    /// <summary>Switches that were never turned off.</summary>
    public IEnumerable<SyntaxToken> LeftOn => switchedOn.OfType<SyntaxToken>();

    public Spans Spans =>
        (Has(SpanKind.TremoloPicking) ? Spans.TremoloPicking : Spans.None)
        | (Has(SpanKind.TremoloArm) ? Spans.TremoloArm : Spans.None)
        | (Has(SpanKind.Wah) ? Spans.Wah : Spans.None)
        | (Has(SpanKind.Crescendo) ? Spans.Crescendo : Spans.None)
        | (Has(SpanKind.Diminuendo) ? Spans.Diminuendo : Spans.None);
}

/// <summary>Letters taken one after another, over and over.</summary>
internal sealed class Cycle(string letters)
{
    private int next;

    public static Cycle None => new("");

    /// <summary>The next letter, or null when there are none.</summary>
    public char? Take() => letters.Length == 0 ? null : letters[next++ % letters.Length];
}
