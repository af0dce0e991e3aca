using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;

namespace Fretlore.Tests.RoadMaps;

/// <summary>A take's notes looked at one by one, without the checker that takes are made with.</summary>
internal static class TakeLook
{
    /// <summary>Notes as they are picked or slurred: bar from 1, time in it, string, fret, and height with its bend. Ties and grace notes are none.</summary>
    public static IEnumerable<(int Bar, Beats At, int String, int Fret, int Height)> NotesOf(SoloTake take) =>
        take.Bars.SelectMany((bar, i) => bar.Strands.SelectMany(s => s.Events).SelectMany(e => e.Notes.Where(n => !n.IsTiedFromBefore).Select(n =>
            (i + 1, e.Start, n.String.Value, n.Fret.Number, n.Sounding.Midi + (Math.Max(n.Bend?.FromCents ?? 0, n.Bend?.ToCents.Items.FirstOrDefault() ?? 0) + 50) / 100))));

    /// <summary>What breaks a rule about single notes, as far as it can be seen note by note; licks and the notes that lead to a target are passed over.</summary>
    public static IEnumerable<string> Breaks(SoloStretch stretch, SoloTake take)
    {
        var inLicks = take.Check.Licks.SelectMany(l => Enumerable.Range(l.Bar, l.BarCount)).ToHashSet();
        var notes = NotesOf(take).Where(n => stretch.Bars[n.Bar - 1].IsFree && !inLicks.Contains(n.Bar)).ToList();
        for (var i = 0; i < notes.Count; i++)
        {
            var note = notes[i];
            var leads = i + 1 < notes.Count && IsTarget(stretch, notes[i + 1].Bar, notes[i + 1].Height);
            foreach (var wrong in Wrong(stretch, note, leads)) yield return $"bar {note.Bar}, {note.At}: string {note.String} fret {note.Fret}: {wrong}";
        }
        foreach (var bar in stretch.Bars.Where(b => !b.IsFree))
        {
            var fixedNotes = bar.Fixed!.Notes.Select(n => (n.String, n.Fret)).ToList();
            if (!take.Bars[bar.Number - 1].Notes.Select(n => (n.String, n.Fret)).SequenceEqual(fixedNotes)) yield return $"bar {bar.Number} is not the fixed phrase";
        }
        if (stretch.Map.RulesOf<EndRule>().FirstOrDefault() is { } end && NotesOf(take).Last() is var last && NoteName.Wrap(last.Height, 12) != end.Target.PitchClass) yield return "the end is another note";
        foreach (var aim in stretch.Map.RulesOf<AimRule>())
        {
            foreach (var bar in aim.Bars?.In(stretch.Count) ?? [])
            {
                if (!NotesOf(take).Any(n => n.Bar == bar && NoteName.Wrap(n.Height, 12) == aim.Target.PitchClass && stretch.Bars[bar - 1].BeatStarts.Items.Contains(n.At))) yield return $"{aim} is missed";
            }
        }
    }

    private static bool IsTarget(SoloStretch stretch, int bar, int height) => stretch.Map.Rules.Any(rule => rule switch
    {
        AimRule aim => (aim.Bars?.Contains(bar, stretch.Count) ?? true) && aim.Target.PitchClass == NoteName.Wrap(height, 12),
        EndRule end => end.Target.PitchClass == NoteName.Wrap(height, 12),
        _ => false,
    });

    private static IEnumerable<string> Wrong(SoloStretch stretch, (int Bar, Beats At, int String, int Fret, int Height) note, bool leads)
    {
        var map = stretch.Map;
        if (map.RuleIn<ScaleRule>(note.Bar, stretch.Count) is { } scale && !leads)
        {
            Assert.True(ScaleTable.TryFind(scale.Name, out var known));
            if (!known.Tones.Contains(NoteName.Wrap(note.Height - scale.Tonic.PitchClass, 12))) yield return "not in the scale";
        }
        if (map.RuleIn<StringsRule>(note.Bar, stretch.Count) is { } strings && (note.String < strings.Highest.Value || note.String > strings.Lowest.Value)) yield return "another string";
        if (map.RuleIn<FretsRule>(note.Bar, stretch.Count) is { } frets)
        {
            var (low, high) = (Math.Min(frets.From.Number, frets.To.Number), Math.Max(frets.From.Number, frets.To.Number));
            if (note.Fret < low || note.Fret > high) yield return "off the frets";
        }
        foreach (var thing in map.RulesOf<AvoidRule>().SelectMany(a => a.What))
        {
            if (thing is Avoided.OpenStrings && note.Fret == 0) yield return "an open string";
            if (thing is Avoided.Note avoided && NoteName.Wrap(note.Height, 12) == avoided.Name.PitchClass) yield return "a note to avoid";
        }
    }

    /// <summary>The share of notes that two takes don't have in common, from 0 to 1: a note is the same at the same time and height.</summary>
    public static double Difference(IReadOnlyCollection<(int Bar, Beats At, int Height)> one, IReadOnlySet<(int Bar, Beats At, int Height)> other) =>
        1 - (double)one.Count(other.Contains) / Math.Max(one.Count, other.Count);

    public static HashSet<(int Bar, Beats At, int Height)> FreeHeightsOf(SoloStretch stretch, SoloTake take) => [.. NotesOf(take).Where(n => stretch.Bars[n.Bar - 1].IsFree).Select(n => (n.Bar, n.At, n.Height))];
}
