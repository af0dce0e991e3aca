using Fretlore.Hands.Placing;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Says what a line lost on its way to another neck.</summary>
internal static class LossFinder
{
    public static ValueList<RetuneLoss> Find(SourceLine line, NotePlace?[] places, int semitones)
    {
        var losses = new List<RetuneLoss>();
        var until = SoundsUntil(line, places);
        for (var i = 0; i < places.Length; i++)
        {
            var (entry, place) = (line.Entries[i], places[i]);
            if (KindOf(entry, place, until[i], semitones) is { } kind) losses.Add(Loss(kind, entry, place, semitones));
        }
        losses.AddRange(OneFingerShapes(line, places, semitones));
        return losses.OrderBy(loss => loss.Bar).ToValueList();
    }

    private static RetuneLossKind? KindOf(SourceLine.Entry entry, NotePlace? place, double until, int semitones)
    {
        if (place is null) return RetuneLossKind.NoteLeftOut;
        if (entry.Note.IsDead) return null;
        if (place.Sounding != entry.Note.Sounding + semitones) return RetuneLossKind.OctaveMoved;
        if (entry.Note.Harmonic is { Kind: HarmonicKind.Natural } && place.Harmonic is not { Kind: HarmonicKind.Natural }) return RetuneLossKind.HarmonicTouched;
        if (entry.IsDrone && !place.Fret.IsOpen) return RetuneLossKind.DroneStopped;
        return until < entry.SoundsUntil - PlaceMoment.SameTime ? RetuneLossKind.RingCutShort : null;
    }

    private static RetuneLoss Loss(RetuneLossKind kind, SourceLine.Entry entry, NotePlace? place, int semitones) =>
        new(kind, entry.Bar, entry.Note.Id, (entry.Note.String, entry.Note.Fret), entry.Note.Sounding + semitones, place);

    private static double[] SoundsUntil(SourceLine line, NotePlace?[] places)
    {
        var until = new double[places.Length];
        foreach (var onString in Enumerable.Range(0, places.Length).Where(i => places[i] is not null).GroupBy(i => places[i]!.String))
        {
            int[] inOrder = [.. onString.OrderBy(i => line.Entries[i].Start)];
            for (var i = 0; i < inOrder.Length; i++)
            {
                var entry = line.Entries[inOrder[i]];
                until[inOrder[i]] = i + 1 < inOrder.Length ? Math.Max(entry.Start, Math.Min(entry.RingsUntil, line.Entries[inOrder[i + 1]].Start)) : entry.RingsUntil;
            }
        }
        return until;
    }

    private static IEnumerable<RetuneLoss> OneFingerShapes(SourceLine line, NotePlace?[] places, int semitones)
    {
        for (var i = 0; i < places.Length;)
        {
            var end = i + 1;
            while (end < places.Length && ReferenceEquals(line.Entries[end].Item, line.Entries[i].Item)) end++;
            var struck = Enumerable.Range(i, end - i).Where(n => IsStruck(line.Entries[n], line.Entries[i].Item)).ToList();
            if (struck.Count > 1 && IsOneFinger(struck.Select(n => (line.Entries[n].Note.String.Value, line.Entries[n].Note.Fret.Number))))
            {
                var now = struck.Where(n => places[n] is not null).Select(n => (places[n]!.String.Value, places[n]!.Fret.Number)).ToList();
                if (now.Count > 1 && !IsOneFinger(now)) yield return Loss(RetuneLossKind.OneFingerShapeLost, line.Entries[struck[0]], places[struck[0]], semitones);
            }
            i = end;
        }
    }

    private static bool IsStruck(SourceLine.Entry entry, Event item) =>
        item.Notes.Items.Any(note => ReferenceEquals(note, entry.Note)) && !entry.Note.IsDead && entry.Note.Attack != Attack.Held;

    // One fret on neighbouring strings.
    private static bool IsOneFinger(IEnumerable<(int String, int Fret)> places)
    {
        var list = places.OrderBy(place => place.String).ToList();
        return list.TrueForAll(place => place.Fret == list[0].Fret) && list[^1].String - list[0].String == list.Count - 1;
    }
}
