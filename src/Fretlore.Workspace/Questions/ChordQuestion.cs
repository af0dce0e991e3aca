using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Shapes;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Reading.Chords;

namespace Fretlore.Workspace.Questions;

/// <summary>What is this shape called?</summary>
/// <param name="Shape">As typed, see <see cref="ShapeText"/>.</param>
/// <param name="Tuning">As typed, see <see cref="NeckText"/>; null for the usual one.</param>
/// <param name="Capo">As typed, see <see cref="CapoText"/>; null for none. The names are of what sounds.</param>
/// <param name="Key">As typed, see <see cref="KeyText"/>; null when the key is not known.</param>
public sealed record ChordQuestion(string Shape, string? Tuning = null, string? Capo = null, string? Key = null)
{
    /// <summary>Names, best first.</summary>
    public Answer<ImmutableArray<ChordReading>> Ask()
    {
        var typed = Typed();
        if (typed.Misread is { } misread) return misread;
        var (neck, shape) = typed.Value;
        Key? key = null;
        if (Key is not null)
        {
            var read = KeyText.Read(Key);
            if (read.Misread is { } noKey) return noKey;
            key = read.Value;
        }
        Height[] heights = [.. shape.On(neck).Select(sounding => sounding.Height)];
        return ChordNamer.Name(heights, new ChordContext(key)).Candidates;
    }

    /// <summary>A sentence for a shape that sounds but that no hand holds at once; null where one does, and where the question can't be understood.</summary>
    public string? Caution()
    {
        var typed = Typed();
        if (typed.Misread is not null || ShapeReach.CanBeHeld(typed.Value.Shape, typed.Value.Neck)) return null;
        return $"No hand of average size can hold {Shape.Trim()} at once: these are the names of what would sound.";
    }

    private Answer<(Neck Neck, Guitar.Shape Shape)> Typed()
    {
        var neck = NeckText.Read(Tuning, Capo);
        if (neck.Misread is { } noNeck) return noNeck;
        var shape = ShapeText.Read(Shape, neck.Value);
        if (shape.Misread is { } noShape) return noShape;
        return (neck.Value, shape.Value);
    }
}
