using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>The song with a take written out where the road map stood.</summary>
internal static class TakeSheet
{
    /// <summary>The text of the sheet. The take is a riff of its own, which the lesson teaches in the road map's place; the rest stays as it is typed where it can.</summary>
    public static string Write(SongWorkspace workspace, SoloStretch stretch, SoloTake take)
    {
        var name = NameFor(stretch.Song, stretch.Map.Name, take.Number);
        var whole = WriteWhole(stretch, take, name);
        return SheetSplice.InPlace(workspace, stretch, name, whole) ?? whole;
    }

    /// <summary>The whole song written anew.</summary>
    private static string WriteWhole(SoloStretch stretch, SoloTake take, string name)
    {
        var (song, use) = (stretch.Song, stretch.Use);
        var part = stretch.Part with
        {
            Bars = new ValueList<PartBar>([.. stretch.Part.Bars.Items[..use.FirstBar], .. take.Bars, .. stretch.Part.Bars.Items[(use.FirstBar + use.BarCount)..]]),
        };
        var isGone = !song.RoadMapUses.Any(u => u.RoadMap == use.RoadMap && u != use);
        var isRiff = IsRiff(stretch);
        // The same riff written out and played by name would be two things to teach.
        var uses = isRiff
            ? song.RiffUses.Where(u => u.Part != use.Part || u.FirstBar < use.FirstBar || u.FirstBar >= use.FirstBar + use.BarCount).Append(new RiffUse(name, use.Part, use.FirstBar, use.BarCount))
            : song.RiffUses.Items;
        var taught = isRiff ? new Taught(name) : TaughtInSection(stretch);
        var written = song with
        {
            Parts = new ValueList<Part>(song.Parts.Items.SetItem(use.Part, part)),
            Riffs = isRiff ? new ValueList<Riff>([.. song.Riffs, RiffOf(stretch, take, name)]) : song.Riffs,
            RiffUses = uses.ToValueList(),
            RoadMapUses = song.RoadMapUses.Where(u => u != use).ToValueList(),
            RoadMaps = song.RoadMaps.Where(m => !isGone || m.Name != use.RoadMap).ToValueList(),
            Lesson = isGone ? Taught(song.Lesson, use.RoadMap, taught) : song.Lesson,
        };
        return SheetWriter.Write(written, new SheetStyle(FindsRiffs: false)).Text;
    }

    private static string NameFor(Song song, string map, int number)
    {
        var names = song.Riffs.Select(r => r.Name).Concat(song.RoadMaps.Select(m => m.Name)).ToHashSet(StringComparer.Ordinal);
        var name = FormattableString.Invariant($"{map}.take{number}");
        for (var again = 2; names.Contains(name); again++) name = FormattableString.Invariant($"{map}.take{number}-{again}");
        return name;
    }

    // What changes for the whole song in its midst can't stand in a riff.
    private static bool IsRiff(SoloStretch stretch) => stretch.Bars.Skip(1).All(b => b.Bar.Tempos.Count == 0 && b.Bar.FeelChange is null && b.Bar.Key == stretch.Bars[0].Bar.Key)
        && stretch.Bars.All(b => b.Bar is { RepeatCount: 0, StartsRepeat: false, IsPickup: false, EndingPasses.Count: 0 })
        && stretch.Bars[0].Bar.Tempos.All(t => t.At.IsZero)
        && stretch.Bars.Select((_, i) => stretch.Part.Bars[stretch.Use.FirstBar + i].Neck).All(n => n == stretch.Part.Bars[stretch.Use.FirstBar].Neck);

    private static Riff RiffOf(SoloStretch stretch, SoloTake take, string name) => new()
    {
        Name = name,
        Neck = stretch.Part.Bars[stretch.Use.FirstBar].Neck,
        Bars = stretch.Bars.Select(b => b.Bar with { Number = b.Number, EndLine = BarLine.Single }).ToValueList(),
        Content = take.Bars.ToValueList(),
    };

    private static Taught TaughtInSection(SoloStretch stretch)
    {
        var section = RoadMapPlace.SectionOf(stretch.Song, stretch.Use);
        var first = stretch.Use.FirstBar - section.FirstBar + 1;
        return new Taught(section.Name, new BarRange(first, first + stretch.Count - 1), stretch.Song.Parts.Count > 1 ? stretch.Part.Name : null);
    }

    private static LessonPlan? Taught(LessonPlan? lesson, string map, Taught instead) => lesson is null ? null : lesson with
    {
        Steps = lesson.Steps.Select(s => s with { Teaches = s.Teaches.Select(t => t.Name == map ? instead : t).ToValueList() }).ToValueList(),
        Excerpt = lesson.Excerpt?.Name == map ? instead : lesson.Excerpt,
    };
}
