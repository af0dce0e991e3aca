using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>The marks of one note, read once and then put on each of its strings.</summary>
internal sealed record NoteMarks
{
    public BendMoves Moves { get; init; } = BendMoves.None;

    /// <summary>The harmonic mark as written, or null.</summary>
    public MarkSyntax? Harmonic { get; init; }

    public bool IsAccented { get; init; }

    public bool IsGhost { get; init; }

    public bool IsStaccato { get; init; }

    public bool IsPalmMuted { get; init; }

    public Finger? Finger { get; init; }

    public ValueBase? Tremolo { get; init; }

    /// <summary>The trill as written, or null.</summary>
    public MarkSyntax? Trill { get; init; }

    /// <summary>A dip of the arm as written, or null.</summary>
    public MarkSyntax? Dip { get; init; }

    /// <summary>Cents below the pitch.</summary>
    public int DipCents { get; init; }

    public static NoteMarks None { get; } = new();

    /// <summary>Reads marks in the order written.</summary>
    /// <param name="before">A raise in front of the fret, or null.</param>
    /// <param name="marks">What follows the fret.</param>
    /// <param name="isHold">A hold goes on from where its note ended, so a release needs no raise before it here.</param>
    /// <param name="problems">Where findings go.</param>
    public static NoteMarks Read(MarkSyntax? before, ImmutableArray<MarkSyntax> marks, bool isHold, DiagnosticBag problems)
    {
        if (before is null && marks.Length == 0) return None;
        var read = new NoteMarks();
        var from = before is null ? 0 : RaiseCents(before, problems);
        var height = from;
        var to = ImmutableArray.CreateBuilder<int>();
        var vibrato = default(Vibrato);
        TextSpan? bendSpan = before?.Span;
        foreach (var mark in marks)
        {
            switch (mark.Kind)
            {
                case MarkKind.Raise:
                    height = RaiseCents(mark, problems);
                    to.Add(height);
                    bendSpan = Cover(bendSpan, mark.Span);
                    break;
                case MarkKind.Release:
                    if (height == 0 && !(isHold && to.Count == 0)) problems.Add(TechniqueProblems.NothingToRelease(mark.Span));
                    else to.Add(0);
                    height = 0;
                    bendSpan = Cover(bendSpan, mark.Span);
                    break;
                case MarkKind.Vibrato:
                    vibrato = new Vibrato(VibratoWidth.Normal, to.Count);
                    break;
                case MarkKind.WideVibrato:
                    vibrato = new Vibrato(VibratoWidth.Wide, to.Count);
                    break;
                case MarkKind.Harmonic:
                    read = read with { Harmonic = mark };
                    break;
                case MarkKind.Accent:
                    read = read with { IsAccented = true };
                    break;
                case MarkKind.Ghost:
                    read = read with { IsGhost = true };
                    break;
                case MarkKind.Staccato:
                    read = read with { IsStaccato = true };
                    break;
                case MarkKind.PalmMute:
                    read = read with { IsPalmMuted = true };
                    break;
                case MarkKind.Finger:
                    read = read with { Finger = ReadFinger(mark, problems) };
                    break;
                case MarkKind.Trill:
                    read = read with { Trill = mark };
                    break;
                case MarkKind.Dip:
                    read = read with { Dip = mark, DipCents = RaiseCents(mark, problems) };
                    break;
                case MarkKind.Tremolo:
                    read = read with { Tremolo = ReadTremolo(mark) };
                    break;
            }
        }
        if (isHold && marks.FirstOrDefault(m => StrikesAgain(m.Kind)) is { } odd) problems.Add(TechniqueProblems.HeldNoteIsNotStruck(odd.Span));
        return read with { Moves = new BendMoves(from, to.DrainToImmutable(), vibrato, bendSpan ?? default) };
    }

    /// <summary>These marks with those of the chord around them.</summary>
    public NoteMarks With(NoteMarks outer) => ReferenceEquals(outer, None) ? this : this with
    {
        Moves = Moves.HasBend || outer.Moves is { HasBend: false, Vibrato.Width: VibratoWidth.None } ? Moves : outer.Moves,
        Harmonic = Harmonic ?? outer.Harmonic,
        IsAccented = IsAccented || outer.IsAccented,
        IsGhost = IsGhost || outer.IsGhost,
        IsStaccato = IsStaccato || outer.IsStaccato,
        IsPalmMuted = IsPalmMuted || outer.IsPalmMuted,
        Finger = Finger ?? outer.Finger,
        Tremolo = Tremolo ?? outer.Tremolo,
        Trill = Trill ?? outer.Trill,
        Dip = Dip ?? outer.Dip,
        DipCents = Dip is null ? outer.DipCents : DipCents,
    };

    private static bool StrikesAgain(MarkKind kind) =>
        kind is MarkKind.Harmonic or MarkKind.Accent or MarkKind.Ghost or MarkKind.Staccato or MarkKind.Tremolo or MarkKind.Trill or MarkKind.Dip;

    private static TextSpan Cover(TextSpan? a, TextSpan b) => a is { } first ? TextSpan.FromBounds(first.Start, b.End) : b;

    // A bare plus is a whole step; cents without an amount stand alone.
    private static int RaiseCents(MarkSyntax mark, DiagnosticBag problems)
    {
        var amount = mark.Amount is { IsMissing: false, Text.Length: > 0 } word ? word.Text : null;
        var beyond = mark.Cents is { IsMissing: false } cents ? Numerals.Of(cents.Text.TrimEnd('c')) ?? 0 : (int?)null;
        var steps = amount switch
        {
            "q" => 50,
            "h" => 100,
            "wh" => 300,
            "ww" => 400,
            null => beyond is null ? 200 : 0,
            _ => 200,
        };
        var raised = (long)steps + (beyond ?? 0);
        if (raised > HardestBend) problems.Add(TechniqueProblems.BendTooWide(mark.Span));
        return (int)Math.Min(raised, WidestBend);
    }

    /// <summary>Two whole steps: more than that tears at the string (common practice).</summary>
    private const int HardestBend = 400;

    private const int WidestBend = 1200;

    private static Finger? ReadFinger(MarkSyntax mark, DiagnosticBag problems)
    {
        if (Numerals.Of(mark.Amount) is { } number and <= 4) return (Finger)number;
        if (mark.Amount is { IsMissing: false }) problems.Add(TechniqueProblems.NoSuchFinger(mark.Span));
        return null;
    }

    private static ValueBase? ReadTremolo(MarkSyntax mark) =>
        mark.Amount is { IsMissing: false, Text.Length: > 0 } value ? TimeCell.ReadBase(value.Text[0]) : null;
}
