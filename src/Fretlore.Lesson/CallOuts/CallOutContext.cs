using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts;

/// <summary>What a call-out may refer to: the song's other riffs, its named shapes and their chord names.</summary>
internal sealed record CallOutContext(CallOutStyle Style, ValueList<Riff> Riffs, ValueList<NamedShape> Shapes,
    ValueList<ShapeReading> Names, SongHands? Hands = null)
{
    public static CallOutContext Of(Song song, SongReading? reading, CallOutStyle style, SongHands? hands = null) =>
        new(style, song.Riffs, song.Shapes, reading is { Shapes.IsDefault: false } ? new ValueList<ShapeReading>(reading.Shapes) : [], hands)
        {
            Roles = reading is { Roles.IsDefaultOrEmpty: false } ? reading.Roles : [],
        };

    /// <summary>What every note does, by its id; empty when there is no reading.</summary>
    public ImmutableArray<NoteRole> Roles { get; init; } = [];

    /// <summary>The riff that one varies, when it was written for the same neck.</summary>
    public Riff? BaseOf(Riff riff) => riff.VariationOf is { } name && Riffs.FirstOrDefault(r => r.Name == name) is { } found
        && found.Neck == riff.Neck && found.Name != riff.Name ? found : null;

    /// <summary>A named shape's sounded notes on a neck, low to high; null when it is not for this neck.</summary>
    public ValueList<Note>? ShapeOn(string name, Neck neck)
    {
        var shape = Shapes.FirstOrDefault(s => s.Name == name)?.Shape;
        if (shape is null || shape.LowToHigh.Count != neck.StringCount) return null;
        return shape.On(neck).Select(p => new Note { String = p.String, Fret = p.Fret, Sounding = p.Height }).ToValueList();
    }

    /// <summary>The chord a named shape is, in spoken words; null when the reading has none.</summary>
    public string? ChordOf(string shape)
    {
        var candidates = Names.FirstOrDefault(n => n.Shape == shape)?.Candidates;
        return candidates is { IsDefaultOrEmpty: false } list ? ChordWords.Of(list[0]) : null;
    }
}
