using System.Collections.Immutable;
using System.Text;
using Fretlore.Music;
using Fretlore.Music.Scales;

namespace Fretlore.Reading.Scales;

/// <summary>Words a scale candidate: what is missing, what is outside, and why it fits.</summary>
internal static class ScaleWording
{
    /// <summary>A scale told by itself.</summary>
    internal static ScaleReading Whole(Scale scale, NoteName root) => new(
        scale.Name, root, [], [],
        $"{root} {scale.Name} has the notes {string.Join(' ', scale.NotesFrom(root))}, the degrees {string.Join(' ', scale.Degrees.Select(d => d.ToDegree()))}.", 0);

    internal static ScaleReading Read(Scale scale, NoteName root, NoteWeights weights, Func<int, NoteName?> spell, double cost)
    {
        var played = weights.Set;
        var missing = ImmutableArray.CreateBuilder<NoteName>();
        foreach (var degree in scale.Degrees)
        {
            var note = root.Transpose(degree);
            if (!played.Contains(note.PitchClass)) missing.Add(note);
        }
        var outside = ImmutableArray.CreateBuilder<NoteName>();
        foreach (var semitones in played.From(root.PitchClass).Except(scale.Tones))
        {
            var pitchClass = NoteName.Wrap(root.PitchClass + semitones, 12);
            outside.Add(spell(pitchClass) ?? root.Transpose(Interval.Chromatic(semitones)));
        }
        var text = new StringBuilder();
        if (outside.Count == 0 && missing.Count == 0) text.Append("Exactly the notes of ").Append(root).Append(' ').Append(scale.Name);
        else if (outside.Count == 0) text.Append("All notes are in ").Append(root).Append(' ').Append(scale.Name);
        else text.Append(Listed(outside)).Append(outside.Count == 1 ? " is" : " are").Append(" outside ").Append(root).Append(' ').Append(scale.Name);
        if (missing.Count > 0) text.Append("; its ").Append(Listed(missing)).Append(missing.Count == 1 ? " is" : " are").Append(" not played");
        if (!played.Contains(root.PitchClass)) text.Append("; the root itself does not sound");
        return new ScaleReading(scale.Name, root, missing.ToImmutable(), outside.ToImmutable(), text.Append('.').ToString(), Math.Round(cost, 4));
    }

    private static string Listed(ImmutableArray<NoteName>.Builder notes) => notes.Count == 1
        ? notes[0].ToString()
        : string.Join(", ", notes.Take(notes.Count - 1)) + " and " + notes[^1];
}
