using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>A bar's events in time.</summary>
/// <param name="Events">In order.</param>
/// <param name="Length">How long the bar is by its values; null where only the metre says it.</param>
/// <param name="Columns">The column of each event.</param>
/// <param name="IsGuessed">True when the rhythm is worked out from spacing.</param>
internal sealed record TimedBar(List<RawEvent> Events, Beats? Length, List<int> Columns, bool IsGuessed);

/// <summary>Gives the notes of bars their times: those of the values above them, of the beats counted above them, or of their spacing.</summary>
internal sealed class BarEvents(TextFindings findings)
{
    // So many notes in one bar are several bars whose lines are missing.
    public const int MostMoments = 48;

    public TimedBar Of(ReadBar bar, Meter meter, Neck neck)
    {
        var moments = bar.Moments();
        var made = FromValues(bar, moments) ?? FromCounts(bar, moments, meter) ?? FromSpacing(bar, moments, meter);
        for (var i = 0; i < made.Events.Count; i++)
        {
            var column = made.Columns[i];
            var found = moments.FindIndex(m => m.Column == column);
            if (found >= 0) AddNotes(made.Events[i], moments[found].Notes, neck);
        }
        LabelMarks.Put(bar.Labels, made);
        return made;
    }

    // Each note stands under a value, give or take a character.
    private static TimedBar? FromValues(ReadBar bar, List<(int Column, List<ReadNote> Notes)> moments)
    {
        var values = bar.Labels.Values;
        if (values.Count == 0) return null;
        var (events, columns, time) = (new List<RawEvent>(), new List<int>(), Beats.Zero);
        var next = 0;
        foreach (var value in values)
        {
            var under = next < moments.Count && Math.Abs(moments[next].Column - value.Column) <= 1;
            columns.Add(under ? moments[next++].Column : value.Column);
            events.Add(new RawEvent { Start = time, Duration = value.Length, Value = value.Value, Tuplet = value.Tuplet, Voice = 1 });
            time += value.Length;
        }
        if (next < moments.Count) return null;
        JoinTuplets(events);
        return new TimedBar(events, time, columns, false);
    }

    // What a tuplet counts is the smallest value in it; it ends where its values have filled it.
    private static void JoinTuplets(List<RawEvent> events)
    {
        for (var i = 0; i < events.Count;)
        {
            var end = i + 1;
            if (events[i].Tuplet is { } tuplet)
            {
                var (unit, time) = (tuplet.Unit, events[i].Duration);
                while (end < events.Count && !time.Modulo((tuplet with { Unit = unit }).GroupLength).IsZero && events[end].Tuplet is { } other && (other.Count, other.InTimeOf) == (tuplet.Count, tuplet.InTimeOf))
                {
                    if (other.Unit > unit) unit = other.Unit;
                    time += events[end++].Duration;
                }
                for (var j = i; j < end; j++) events[j].Tuplet = tuplet with { Unit = unit };
            }
            i = end;
        }
    }

    private static TimedBar? FromCounts(ReadBar bar, List<(int Column, List<ReadNote> Notes)> moments, Meter meter)
    {
        var counts = bar.Labels.Counts.OrderBy(c => c.Column).ToList();
        if (counts.Count < 2 || moments.Count == 0) return null;
        var beat = Beats.Of(4, meter.Unit);
        var starts = new List<Beats>();
        foreach (var (column, _) in moments)
        {
            var after = counts.FindIndex(c => c.Column >= column);
            if (after < 0) after = counts.Count - 1;
            var before = Math.Max(0, counts[after].Column == column ? after : after - 1);
            var (a, b) = (counts[before], counts[Math.Max(after, before)]);
            var place = a.Place;
            if (b.Column > a.Column) place += Beats.Of((long)Math.Round((b.Place - a.Place).ToDouble() * (column - a.Column) / (b.Column - a.Column) * 4), 4);
            else if (column > a.Column + 1) place += Beats.Of(1, 4);
            starts.Add(place * beat);
        }
        for (var i = 0; i < starts.Count; i++)
        {
            if (starts[i] < Beats.Zero || starts[i] >= meter.Length || (i > 0 && starts[i] <= starts[i - 1])) return null;
        }
        return new TimedBar(Lasting(starts, meter.Length), null, moments.ConvertAll(m => m.Column), false);
    }

    private TimedBar FromSpacing(ReadBar bar, List<(int Column, List<ReadNote> Notes)> moments, Meter meter)
    {
        if (moments.Count == 0) return new TimedBar([], null, [], false);
        var columns = moments.ConvertAll(m => m.Column);
        var rhythm = SpacingRhythm.Of(columns, Math.Max(bar.Width, columns[^1] + 1), meter, bar.FirstBeat);
        if (rhythm.IsUneven) findings.Add(TextFindingKind.RhythmUneven, bar.Line, bar.Index, bar.Width);
        return new TimedBar(Lasting([.. rhythm.Starts], meter.Length), null, columns, true);
    }

    // Each note sounds until the next one starts.
    private static List<RawEvent> Lasting(List<Beats> starts, Beats length) =>
        [.. starts.Select((start, i) => new RawEvent { Start = start, Duration = (i + 1 < starts.Count ? starts[i + 1] : length) - start, Voice = 1 })];

    private void AddNotes(RawEvent item, List<ReadNote> notes, Neck neck)
    {
        foreach (var note in notes)
        {
            foreach (var grace in note.Graces.Select(g => Of(g, neck)).OfType<RawNote>()) item.Graces.Add(grace);
            if (Of(note, neck) is { } made && !item.Notes.Exists(n => n.String == made.String)) item.Notes.Add(made);
        }
    }

    private RawNote? Of(ReadNote note, Neck neck)
    {
        var highest = neck.HighestFret.Number + (note.Harmonic is { Kind: HarmonicKind.Natural } ? 12 : 0);
        var (number, fret) = (new StringNumber(note.String), new Fret(note.Fret));
        if (note.Fret > highest || neck.Capo.IsBehind(number, fret))
        {
            findings.Add(note.Fret > highest ? TextFindingKind.NoSuchFret : TextFindingKind.FretBehindCapo, note.Line, note.Index, 1, SheetWords.Of(note.Fret));
            return null;
        }
        var sounding = note.Harmonic switch
        {
            { Kind: HarmonicKind.Natural } => neck.Open(number) + (neck.Harmonic(number, Fret.Open, fret) ?? 0),
            { Kind: HarmonicKind.Touched } touched => neck.Sounding(number, fret) + (neck.Harmonic(number, fret, touched.TouchedAt) ?? 12),
            _ => neck.Sounding(number, fret),
        };
        var made = new RawNote { Midi = sounding.Midi, String = note.String, Fret = note.Fret };
        made.Marks = made.Marks with
        {
            Attack = note.Attack,
            GlideIn = note.GlideIn,
            GlideOut = note.GlideOut,
            IsDead = note.IsDead,
            IsGhost = note.IsGhost,
            Harmonic = note.IsDead ? null : note.Harmonic,
            Vibrato = new Vibrato(note.Vibrato, note.VibratoAfter),
        };
        if (note.BentBefore > 0 && note.Attack != Attack.Held) made.Bends.Add((note.BentBefore, true));
        var at = note.BentBefore;
        foreach (var to in note.Bends)
        {
            made.Bends.Add((to - at, false));
            at = to;
        }
        return made;
    }
}
