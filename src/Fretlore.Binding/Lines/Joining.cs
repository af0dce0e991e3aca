using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>How the hand comes to the next event.</summary>
internal enum Joint
{
    None,
    Legato,
    Glide,
    PickedGlide,
}

/// <summary>Decides how a note comes to sound from the joint before it and what its string did before.</summary>
internal static class Joining
{
    /// <param name="joint">What is written before the note.</param>
    /// <param name="tapped">True with a <c>t</c>.</param>
    /// <param name="number">The note's string.</param>
    /// <param name="fret">The note's fret.</param>
    /// <param name="isDead">A dead note is struck by the hand wherever it lies.</param>
    /// <param name="sounding">The notes of the event before.</param>
    /// <param name="span">The note's place in the text.</param>
    /// <param name="problems">Where contradictions go.</param>
    public static Attack Decide(
        Joint joint, bool tapped, StringNumber number, Fret fret, bool isDead, ImmutableArray<Note> sounding, TextSpan span,
        DiagnosticBag problems)
    {
        Note? before = null;
        foreach (var note in sounding)
        {
            if (note.String == number && !note.IsDead) before = note;
        }
        if (tapped) return Tapped(joint, fret, before, span, problems);
        return joint switch
        {
            Joint.Legato => Legato(fret, isDead, before, sounding, span, problems),
            Joint.Glide or Joint.PickedGlide => Glided(joint, fret, before, sounding, span, problems),
            _ => Attack.Picked,
        };
    }

    private static Attack Tapped(Joint joint, Fret fret, Note? before, TextSpan span, DiagnosticBag problems)
    {
        if (fret.IsOpen) problems.Add(TechniqueProblems.TapOnOpenString(span));
        else if (joint is Joint.Glide or Joint.PickedGlide) problems.Add(TechniqueProblems.GlideToTap(span));
        else if (joint == Joint.Legato && before is not null && fret.Number <= before.Fret.Number)
        {
            problems.Add(TechniqueProblems.HammerOnToLowerFret(span, fret.Number, before.Fret.Number));
        }
        return Attack.Tap;
    }

    private static Attack Legato(
        Fret fret, bool isDead, Note? before, ImmutableArray<Note> sounding, TextSpan span, DiagnosticBag problems)
    {
        if (before is not null && !isDead)
        {
            if (fret == before.Fret) problems.Add(TechniqueProblems.LegatoToSameFret(span, fret.Number));
            return fret.Number >= before.Fret.Number ? Attack.HammerOn : Attack.PullOff;
        }
        if (!fret.IsOpen || isDead) return Attack.HammerFromNowhere;
        problems.Add(sounding.Length > 0 ? TechniqueProblems.LegatoNeedsOneString(span) : TechniqueProblems.OpenStringFromNowhere(span));
        return Attack.Picked;
    }

    private static Attack Glided(
        Joint joint, Fret fret, Note? before, ImmutableArray<Note> sounding, TextSpan span, DiagnosticBag problems)
    {
        if (before is null)
        {
            problems.Add(sounding.Length > 0 ? TechniqueProblems.GlideNeedsOneString(span) : TechniqueProblems.GlideFromNothing(span));
            return Attack.Picked;
        }
        if (fret == before.Fret) problems.Add(TechniqueProblems.GlideToSameFret(span, fret.Number));
        else if (fret.IsOpen || before.Fret.IsOpen) problems.Add(TechniqueProblems.GlideOnOpenString(span));
        return joint == Joint.Glide ? Attack.Glide : Attack.PickedGlide;
    }
}
