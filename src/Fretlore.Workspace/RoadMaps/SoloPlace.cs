using System.Collections.Immutable;
using System.Globalization;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;
using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.RoadMaps;

/// <summary>Finds a solo in a sheet of its own, to be held against a road map.</summary>
internal static class SoloPlace
{
    /// <summary>The bars of the solo, one for each of the stretch: where the road map stands in the same song, in a section as long, or the whole sheet.</summary>
    /// <param name="solo">The sheet's song.</param>
    /// <param name="stretch">The road map where it stands.</param>
    /// <param name="part">The part that plays the solo, as typed; null for the one that plays the road map, or the only one.</param>
    /// <param name="from">The printed number of its first bar; null to look for it.</param>
    public static Answer<ImmutableArray<PartBar>> Find(Song solo, SoloStretch stretch, string? part, int? from)
    {
        var chosen = PartOf(solo, stretch, part);
        if (chosen.Misread is { } misread) return misread;
        var index = chosen.Value;
        if (solo.Parts[index].Neck.Tuning != stretch.Part.Neck.Tuning)
        {
            var tuning = solo.Parts[index].Neck.Tuning.ToString();
            return new Misread(tuning, 1, tuning.Length, $"The solo is tuned {tuning}, and the road map is for {stretch.Part.Neck.Tuning}.", "Carry the solo over first: fretlore retune.");
        }
        var first = FirstBar(solo, stretch, from);
        if (first.Misread is { } nowhere) return nowhere;
        for (var i = 0; i < stretch.Count; i++)
        {
            if (solo.Bars[first.Value + i].Length == stretch.Bars[i].Length) continue;
            var bar = Number(solo.Bars[first.Value + i].Number);
            return new Misread(bar, 1, bar.Length, $"Bar {bar} of the solo is not as long as bar {Number(i + 1)} of the road map.", "Give the solo the road map's metre, or say in which bar it begins with --from.");
        }
        return ImmutableArray.CreateRange(solo.Parts[index].Bars.Items.Slice(first.Value, stretch.Count));
    }

    private static Answer<int> PartOf(Song solo, SoloStretch stretch, string? part)
    {
        if (part is not null)
        {
            var chosen = PartChoice.Read(part, solo);
            if (chosen.Misread is { } misread) return misread;
            return chosen.Value.Count == 1 ? chosen.Value[0] : new Misread(part, 1, part.Length, "A solo is one part.", "Name one part of the solo's sheet.");
        }
        var same = solo.Parts.Items.ToList().FindIndex(p => p.Name == stretch.Part.Name);
        if (same >= 0) return same;
        if (solo.Parts.Count == 1) return 0;
        var names = string.Join(", ", solo.Parts.Select(p => p.Name));
        return new Misread(names, 1, names.Length, "It is not clear which part plays the solo.", "Say it with --part.");
    }

    private static Answer<int> FirstBar(Song solo, SoloStretch stretch, int? from)
    {
        var count = stretch.Count;
        if (from is { } number)
        {
            var at = solo.Bars.Items.ToList().FindIndex(b => b.Number == number && !b.IsPickup);
            var typed = Number(number);
            if (at < 0) return new Misread(typed, 1, typed.Length, $"The solo's sheet has no bar {typed}.", $"Give the number of a bar, up to {Number(solo.Bars[^1].Number)}.");
            return at + count <= solo.Bars.Count ? at : new Misread(typed, 1, typed.Length, $"From bar {typed} on the solo's sheet has fewer bars than the road map's {Number(count)}.", "Let it begin earlier.");
        }
        if (solo.Bars.Count == stretch.Song.Bars.Count) return stretch.Use.FirstBar;
        if (solo.Bars.Count == count) return 0;
        var own = RoadMapPlace.SectionOf(stretch.Song, stretch.Use);
        if (solo.Sections.Items.FirstOrDefault(s => s.Name == own.Name && s.BarCount == own.BarCount) is { } section) return section.FirstBar + stretch.Use.FirstBar - own.FirstBar;
        var bars = Number(solo.Bars.Count);
        return new Misread(bars, 1, bars.Length, $"The solo's sheet has {bars} bars and the road map {Number(count)}: it is not clear where the solo begins.", "Say the number of its first bar with --from.");
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
