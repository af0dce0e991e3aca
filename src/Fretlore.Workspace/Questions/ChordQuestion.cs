using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Reading.Chords;

namespace Fretlore.Workspace.Questions;

/// <summary>What is this shape called?</summary>
/// <param name="Shape">As typed, see <see cref="ShapeText"/>.</param>
/// <param name="Tuning">As typed, see <see cref="NeckText"/>; null for the usual one.</param>
/// <param name="Capo">The fret the capo is at; 0 for none. Frets count from it, and the names are of what sounds.</param>
/// <param name="Key">As typed, see <see cref="KeyText"/>; null when the key is not known.</param>
public sealed record ChordQuestion(string Shape, string? Tuning = null, int Capo = 0, string? Key = null)
{
    /// <summary>Names, best first.</summary>
    public Answer<ImmutableArray<ChordReading>> Ask()
    {
        var neck = NeckText.Read(Tuning, Capo);
        if (neck.Misread is { } noNeck) return noNeck;
        var shape = ShapeText.Read(Shape, neck.Value);
        if (shape.Misread is { } noShape) return noShape;
        Key? key = null;
        if (Key is not null)
        {
            var read = KeyText.Read(Key);
            if (read.Misread is { } noKey) return noKey;
            key = read.Value;
        }
        Height[] heights = [.. shape.Value.On(neck.Value).Select(sounding => sounding.Height)];
        return ChordNamer.Name(heights, new ChordContext(key)).Candidates;
    }
}
