using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>The accidentals to print in one bar: where a note differs from the key or from the note before it on its line (common practice).</summary>
internal static class Accidentals
{
    public static Dictionary<NoteId, string> Of(Bar bar, PartBar content, SongReading reading)
    {
        var printed = new Dictionary<NoteId, string>();
        var inForce = new Dictionary<int, int>();
        var signature = new int[7];
        foreach (var name in new Key(NoteName.FromFifths(bar.Key?.Signature ?? 0), Mode.Ionian).Notes) signature[(int)name.Step] = name.Alteration;
        foreach (var note in content.Strands.SelectMany(s => s.Events).OrderBy(e => e.Start).SelectMany(e => e.Graces.Concat(e.Notes)))
        {
            if (note.IsTiedFromBefore) continue;
            var pitch = reading.SpellingOf(note.Id);
            var before = inForce.TryGetValue(pitch.DiatonicNumber, out var alteration) ? alteration : signature[(int)pitch.Name.Step];
            if (before == pitch.Name.Alteration) continue;
            inForce[pitch.DiatonicNumber] = pitch.Name.Alteration;
            if (NameOf(pitch.Name.Alteration) is { } name) printed[note.Id] = name;
        }
        return printed;
    }

    private static string? NameOf(int alteration) => alteration switch
    {
        -3 => "triple-flat",
        -2 => "flat-flat",
        -1 => "flat",
        0 => "natural",
        1 => "sharp",
        2 => "double-sharp",
        3 => "triple-sharp",
        _ => null,
    };
}
