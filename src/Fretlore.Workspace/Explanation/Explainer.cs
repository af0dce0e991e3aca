using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Workspace.Questions;

namespace Fretlore.Workspace.Explanation;

/// <summary>Puts a song's reading into words.</summary>
public static class Explainer
{
    /// <param name="song">The song.</param>
    /// <param name="reading">Its reading.</param>
    /// <param name="hands">How the fretting hand plays it.</param>
    /// <param name="bar">The printed number of the only bar wanted; null for all.</param>
    public static Answer<SongExplanation> Explain(Song song, SongReading reading, SongHands hands, int? bar = null)
    {
        bool IsWanted(int index) => bar is null || song.Bars[index].Number == bar;
        var wanted = Enumerable.Range(0, song.Bars.Count).Where(IsWanted).ToArray();
        if (bar is { } number && wanted.Length == 0)
        {
            var typed = number.ToString(System.Globalization.CultureInfo.InvariantCulture);
            return new Misread(
                typed, 1, typed.Length, $"{song.Info.Title} has no bar {typed}.", $"Its bars are {song.Bars[0].Number} to {song.Bars[^1].Number}.");
        }
        var keys = reading.KeyStretches.Where(k => Overlaps(k.FirstBar, k.BarCount))
            .Select(k => new ExplainedKey(Number(k.FirstBar), Number(k.FirstBar + k.BarCount - 1), k.Key.ToString(), k.IsStated, k.Reason));
        var sections = song.Sections.Where(s => Overlaps(s.FirstBar, s.BarCount)).Select(s => new ExplainedSection(
            s.Name, Number(s.FirstBar), Number(s.FirstBar + s.BarCount - 1),
            [.. Enumerable.Range(0, song.Parts.Count).Select(part => Part(part, s)).Where(part => part.Bars.Count > 0 || part.Scales.Count > 0)]));
        return new SongExplanation(song.Info.Title, [.. keys], [.. sections]);

        bool Overlaps(int first, int count) => wanted.Any(b => b >= first && b < first + count);
        int Number(int index) => song.Bars[Math.Clamp(index, 0, song.Bars.Count - 1)].Number;

        ExplainedPart Part(int index, Section section)
        {
            var part = song.Parts[index];
            var read = reading.Parts[index];
            var end = section.FirstBar + section.BarCount;
            var scales = read.Phrases.Where(p => p.FirstBar < end && p.FirstBar + p.BarCount > section.FirstBar && Overlaps(p.FirstBar, p.BarCount))
                .Select(p => new ExplainedScale(
                    Number(p.FirstBar), Number(p.FirstBar + p.BarCount - 1), $"{p.Scales[0].Root} {p.Scales[0].Name}", p.Scales[0].Reason));
            var bars = wanted.Where(b => b >= section.FirstBar && b < end && !part.Bars[b].IsRest).Select(b => new ExplainedBar(
                song.Bars[b].Number,
                [.. read.Chords.Where(c => c.Bar == b).Select(c => Chord(c, song.Bars[b].Meter))],
                [.. Notes(part.Bars[b], song.Bars[b].Meter, reading, hands)]));
            var cadence = read.Cadences.FirstOrDefault(c => c.Bar >= section.FirstBar && c.Bar < end && IsWanted(c.Bar));
            return new ExplainedPart(part.Name, part.Title, [.. scales], [.. bars], cadence?.Words);
        }
    }

    private static ExplainedChord Chord(ChordMoment moment, Meter meter)
    {
        var best = moment.Best;
        var other = moment.Override is not null && moment.Override != best.Symbol ? best.Symbol : null;
        return new ExplainedChord(
            Beat(moment.At, meter), moment.Symbol, other, moment.Function?.Numeral, moment.Function?.Words, best.Reason);
    }

    private static IEnumerable<ExplainedNote> Notes(PartBar bar, Meter meter, SongReading reading, SongHands hands) =>
        from item in bar.Strands.SelectMany(s => s.Events).OrderBy(e => e.Start)
        from note in item.Graces.Concat(item.Notes)
        where !note.IsTiedFromBefore
        let role = reading.Roles[note.Id.Index]
        let hand = hands.Of(note.Id)
        select new ExplainedNote(
            Beat(item.Start, meter), note.String.Value, note.Fret.Number, reading.SpellingOf(note.Id).ToString(), Words(role.Kind),
            role.Kind == RoleKind.Dead ? "" : role.Degree.ToDegree(), role.Words,
            (int?)hand.Finger, hand.Finger is null ? null : hand.Position);

    private static string Words(RoleKind kind) => kind switch
    {
        RoleKind.ChordTone => "chord tone",
        RoleKind.Tension => "tension",
        RoleKind.PassingTone => "passing tone",
        RoleKind.NeighbourTone => "neighbour tone",
        RoleKind.ApproachNote => "approach note",
        RoleKind.KeyNote => "key note",
        RoleKind.Outside => "outside",
        _ => "dead",
    };

    private static double Beat(Beats at, Meter meter) => Math.Round(1 + at.ToDouble() * meter.Unit / 4, 2);
}
