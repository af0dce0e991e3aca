using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Lesson.Steps;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Diagrams;

/// <summary>The pictures that go with a step: its named shapes, or where its riffs lie on the neck.</summary>
internal sealed class StepDiagrams(Song song, SongHands hands)
{
    public ValueList<NeckBox> Of(TeachingStep step) => step.Subjects.SelectMany(s => s.Lines).SelectMany(line => Of(line.Riff)).DistinctBy(box => (box.Title, box.Dots)).ToValueList();

    private IEnumerable<NeckBox> Of(Riff riff)
    {
        var shapes = riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Select(e => e.Shape).OfType<string>().Distinct()
            .Select(name => song.Shapes.FirstOrDefault(s => s.Name == name)).OfType<NamedShape>()
            .Where(s => s.Shape.LowToHigh.Count == riff.Neck.StringCount).ToArray();
        foreach (var shape in shapes) yield return NeckBox.Of(SpokenName.OfShape(shape.Name), shape.Shape, riff.Neck.Capo);
        var map = NeckBox.Of(SpokenName.Of(riff.Name), riff, hands);
        if (shapes.Length == 0 && map.Dots.Count > 0) yield return map;
    }
}
