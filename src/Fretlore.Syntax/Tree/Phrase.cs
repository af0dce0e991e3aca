using System.Collections.Immutable;

namespace Fretlore.Syntax;

/// <summary>Events joined without a blank: <c>4,6,4</c>, <c>lo;15</c>, <c>7+</c>. A single note is a phrase of one.</summary>
/// <param name="pieces"><see cref="JointSyntax"/>, <see cref="EdgeSyntax"/> and <see cref="EventSyntax"/> in the order written.</param>
public sealed class PhraseSyntax(ImmutableArray<SyntaxNode> pieces) : ItemSyntax(Run(pieces))
{
    public ImmutableArray<SyntaxNode> Pieces { get; } = pieces;
}

/// <summary>How the hand gets to the next event: <c>,</c> not picked, <c>;</c> glided.</summary>
/// <remarks>A glide picked on arrival, <c>5; 9</c>, is a phrase that ends in a joint and another phrase.</remarks>
public sealed class JointSyntax(SyntaxToken sign) : SyntaxNode(sign)
{
    public SyntaxToken Sign { get; } = sign;

    public bool IsGlide { get; } = sign.Text == ";";
}

/// <summary><c>lo</c> or <c>hi</c> at either end of a phrase: from or to no fixed fret below or above.</summary>
public sealed class EdgeSyntax(SyntaxToken word) : SyntaxNode(word)
{
    public SyntaxToken Word { get; } = word;

    public bool IsLow { get; } = word.Text == "lo";
}

/// <summary>What sounds at one moment, with a grace sign or a stroke in front.</summary>
public sealed class EventSyntax(SyntaxToken? grace, SyntaxToken? stroke, SoundSyntax sound) : SyntaxNode(grace, stroke, sound)
{
    public SyntaxToken? Grace { get; } = grace;

    /// <summary><c>d</c> or <c>u</c>.</summary>
    public SyntaxToken? Stroke { get; } = stroke;

    public SoundSyntax Sound { get; } = sound;
}

/// <summary>A note, a chord, a named shape, a hold or a rest.</summary>
public abstract class SoundSyntax : SyntaxNode
{
    private protected SoundSyntax(params ReadOnlySpan<object?> children) : base(children)
    {
    }
}

/// <summary>A fret on each selected string: <c>7</c>, <c>x</c>, <c>x5</c>, <c>t17</c>, <c>+15-</c>, with its marks.</summary>
public sealed class NoteSyntax(
    SyntaxToken? tap, MarkSyntax? bentBefore, SyntaxToken? dead, SyntaxToken? fret, ImmutableArray<MarkSyntax> marks, WhereSyntax? at,
    ImmutableArray<MarkSyntax> marksAfterPlace)
    : SoundSyntax(tap, bentBefore, dead, fret, Run(marks), at, Run(marksAfterPlace))
{
    public SyntaxToken? Tap { get; } = tap;

    /// <summary>The raise before the fret: bent before it is picked.</summary>
    public MarkSyntax? BentBefore { get; } = bentBefore;

    public SyntaxToken? Dead { get; } = dead;

    /// <summary>Null for a dead note at no fret.</summary>
    public SyntaxToken? Fret { get; } = fret;

    /// <summary>In the order written; they may stand on either side of the place: <c>17+v@2</c>, <c>17@2+v</c>.</summary>
    public ImmutableArray<MarkSyntax> Marks { get; } = marksAfterPlace.IsEmpty ? marks : [.. marks, .. marksAfterPlace];

    /// <summary>The string (or strings, for one finger across them) of this note alone.</summary>
    public WhereSyntax? At { get; } = at;
}

/// <summary><c>[5 . 6 6 5 .]</c>: a slot for each selected string, or for all, low to high.</summary>
/// <param name="slots">Each a <see cref="NoteSyntax"/>, <see cref="HoldSyntax"/>, <see cref="EmptySlotSyntax"/> or stray.</param>
public sealed class ChordSyntax(
    SyntaxToken? roll, SyntaxToken open, ImmutableArray<SyntaxNode> slots, SyntaxToken close, ImmutableArray<MarkSyntax> marks)
    : SoundSyntax(roll, open, Run(slots), close, Run(marks))
{
    /// <summary><c>roll</c>, <c>roll-down</c> or <c>rake</c>.</summary>
    public SyntaxToken? Roll { get; } = roll;

    public ImmutableArray<SyntaxNode> Slots { get; } = slots;

    /// <summary>Marks for all its notes.</summary>
    public ImmutableArray<MarkSyntax> Marks { get; } = marks;
}

/// <summary><c>.</c> in a chord: the string is not sounded.</summary>
public sealed class EmptySlotSyntax(SyntaxToken dot) : SyntaxNode(dot);

/// <summary><c>#lift</c>, with its marks.</summary>
public sealed class NamedShapeSyntax(SyntaxToken? roll, SyntaxToken hash, SyntaxToken name, ImmutableArray<MarkSyntax> marks)
    : SoundSyntax(roll, hash, name, Run(marks))
{
    public SyntaxToken? Roll { get; } = roll;

    public SyntaxToken Name { get; } = name;

    public ImmutableArray<MarkSyntax> Marks { get; } = marks;
}

/// <summary><c>=</c>: what sounds goes on for another value.</summary>
public sealed class HoldSyntax(SyntaxToken sign, ImmutableArray<MarkSyntax> marks) : SoundSyntax(sign, Run(marks))
{
    public ImmutableArray<MarkSyntax> Marks { get; } = marks;
}

/// <summary><c>R</c>: a rest; with a stroke in front, a stroke in the air.</summary>
public sealed class RestSyntax(SyntaxToken sign) : SoundSyntax(sign);

/// <summary>Kinds of mark.</summary>
public enum MarkKind
{
    /// <summary><c>+</c>, with an amount and cents.</summary>
    Raise,

    /// <summary><c>-</c></summary>
    Release,

    /// <summary><c>v</c></summary>
    Vibrato,

    /// <summary><c>vv</c></summary>
    WideVibrato,

    /// <summary><c>*</c>, <c>*p</c>, <c>*15</c></summary>
    Harmonic,

    /// <summary><c>!</c></summary>
    Accent,

    /// <summary><c>?</c></summary>
    Ghost,

    /// <summary><c>'</c></summary>
    Staccato,

    /// <summary><c>m</c></summary>
    PalmMute,

    /// <summary><c>f3</c></summary>
    Finger,

    /// <summary><c>:Y</c></summary>
    Tremolo,

    /// <summary><c>~7</c></summary>
    Trill,

    /// <summary><c>_</c>, with an amount and cents.</summary>
    Dip,
}

/// <summary>What happens to a note, written right after it.</summary>
/// <param name="kind">Which mark.</param>
/// <param name="sign">Its sign.</param>
/// <param name="amount">For a raise or dip <c>q h w wh ww</c>; for a harmonic <c>p</c> or a fret; a finger's digit; a tremolo value; a trill's other fret.</param>
/// <param name="cents">For a raise or dip: the cents beyond the amount, with the <c>c</c>: <c>20c</c>.</param>
public sealed class MarkSyntax(MarkKind kind, SyntaxToken sign, SyntaxToken? amount = null, SyntaxToken? cents = null)
    : SyntaxNode(sign, amount, cents)
{
    public MarkKind Kind { get; } = kind;

    public SyntaxToken Sign { get; } = sign;

    public SyntaxToken? Amount { get; } = amount;

    public SyntaxToken? Cents { get; } = cents;
}
