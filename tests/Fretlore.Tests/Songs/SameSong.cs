using System.Text;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Songs;

/// <summary>Songs as lines of text without note ids, for saying whether two are the same.</summary>
internal static class SameSong
{
    /// <summary>What is written, bar by bar: form, changes and every part's music.</summary>
    /// <param name="song">The song.</param>
    /// <param name="withShapes">Whether names of shapes and "again" signs count.</param>
    public static string Written(Song song, bool withShapes = true)
    {
        var text = new StringBuilder();
        text.AppendLine(song.Info.ToString());
        foreach (var part in song.Parts) text.AppendLine($"{part.Name} {part.Title} {part.Neck.Tuning} {part.Neck.Capo} {part.Neck.FretCount} {part.Neck.ScaleLength} {part.Sound}");
        foreach (var section in song.Sections) text.AppendLine(section.ToString());
        if (withShapes) foreach (var shape in song.Shapes) text.AppendLine($"{shape.Name} {shape.Shape} {shape.Fingers}");
        foreach (var map in song.RoadMaps) text.AppendLine(map.ToString());
        foreach (var use in song.RoadMapUses) text.AppendLine(use.ToString());
        text.AppendLine(song.Lesson?.ToString());
        foreach (var recording in song.Recordings) text.AppendLine(recording.ToString());
        for (var i = 0; i < song.Bars.Count; i++)
        {
            text.AppendLine($"{i} {song.Bars[i] with { Number = song.Bars[i].Number }}");
            foreach (var part in song.Parts) text.AppendLine("  " + Content(part.Bars[i], withShapes));
        }
        return text.ToString();
    }

    /// <summary>What a listener hears, with repeats unrolled, and where it is played.</summary>
    public static string Performed(Song song) => Performed(song, e => e);

    /// <summary>What a listener hears, with repeats unrolled, wherever on the neck it is played.</summary>
    public static string Heard(Song song) => Performed(song, e => e with { Notes = Heard(e.Notes), Graces = e.Graces.Select(Heard).ToValueList() });

    private static ValueList<Note> Heard(ValueList<Note> notes) => notes.Select(Heard).OrderBy(n => n.Sounding.Midi).ThenBy(n => n.ToString(), StringComparer.Ordinal).ToValueList();

    private static Note Heard(Note note) => note with
    {
        Id = default,
        String = new StringNumber(1),
        Fret = Fret.Open,
        Sounding = note.IsDead ? default : note.Sounding,
        Harmonic = note.Harmonic is { } harmonic ? harmonic with { TouchedAt = Fret.Open } : null,
        Finger = null,
    };

    private static string Performed(Song song, Func<Event, Event> asTold)
    {
        var text = new StringBuilder();
        var tempo = Tempo.Default;
        var feel = Feel.Straight;
        foreach (var played in PlayOrder.Of(song.Bars))
        {
            var bar = song.Bars[played.Bar];
            if (bar.Tempos.Count > 0 && bar.Tempos[0].At.IsZero) tempo = bar.Tempos[0].Tempo;
            if (bar.FeelChange is { } change) feel = change;
            text.AppendLine($"{played.Start} {bar.Meter} {bar.Key} {bar.Length} {feel} {tempo} {string.Join(' ', bar.Tempos.Where(t => !t.At.IsZero))}");
            foreach (var part in song.Parts) text.AppendLine("  " + Content(Changed(part.Bars[played.Bar], asTold), false));
            if (bar.Tempos.Count > 0) tempo = bar.Tempos[^1].Tempo;
        }
        return text.ToString();
    }

    /// <summary>Fails with the first line that differs and the sheet beside it.</summary>
    public static void Same(string expected, string actual, string sheet)
    {
        if (expected == actual) return;
        var (left, right) = (expected.Split('\n'), actual.Split('\n'));
        var at = Enumerable.Range(0, Math.Min(left.Length, right.Length)).FirstOrDefault(i => left[i] != right[i], Math.Min(left.Length, right.Length));
        Assert.Fail($"Line {at} differs:\n{left.ElementAtOrDefault(at - 1)}\n- {left.ElementAtOrDefault(at)}\n+ {right.ElementAtOrDefault(at)}\n\n{sheet}");
    }

    private static PartBar Changed(PartBar bar, Func<Event, Event> change) =>
        bar with { Strands = bar.Strands.Select(s => s with { Events = s.Events.Select(change).ToValueList() }).ToValueList() };

    private static string Content(PartBar bar, bool withShapes) =>
        $"{(withShapes ? bar.Repeats : 0)} {bar.RoadMap} {bar.Neck.Capo} " + string.Join(" / ", bar.Strands.Select(s => $"{s.Kind}: " + string.Join("\n      ", s.Events.Select(e => Plain(e, withShapes).ToString()))));

    private static Event Plain(Event e, bool withShapes) => e with
    {
        Notes = e.Notes.Select(n => n with { Id = default }).ToValueList(),
        Graces = e.Graces.Select(n => n with { Id = default }).ToValueList(),
        Shape = withShapes ? e.Shape : null,
    };
}
