using System.Globalization;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>The notes of one player.</summary>
/// <param name="Title">Its name.</param>
/// <param name="Program">Its General MIDI program as sent, or null.</param>
/// <param name="Keys">Its notes in order of their starts.</param>
/// <param name="Wheels">Where its channels' wheels move.</param>
/// <param name="Neck">The tuning and capos that its track states, and with them which string each channel is; null when it states none.</param>
internal sealed record PartTrack(string Title, int? Program, List<MidiKey> Keys, Dictionary<int, List<(long Tick, double Cents)>> Wheels, StatedNeck? Neck);

/// <summary>Shares the notes of a file out among parts: a track is a part, or each of its instruments.</summary>
internal static class PartTracks
{
    // The channel of the drums in General MIDI.
    private const int Drums = 10;

    public static List<PartTrack> Of(List<MidiTrack> tracks, Remarks remarks)
    {
        var parts = new List<PartTrack>();
        foreach (var track in tracks)
        {
            var name = track.Name;
            if (track.Keys.Exists(k => k.Channel == Drums)) remarks.Add(RemarkKind.LeftOut, "Drums are not carried over.", name);
            var keys = track.Keys.Where(k => k.Channel != Drums).ToList();
            if (keys.Count == 0) continue;
            var neck = StatedNeck.Of(track, keys);
            var groups = neck is not null || IsOnePlayer(track, keys) ? [keys] : keys.GroupBy(k => k.Channel).OrderBy(g => g.Key).Select(g => g.ToList()).ToList();
            for (var i = 0; i < groups.Count; i++)
            {
                var title = groups.Count == 1 ? name : name is null || tracks.Count(t => t.Keys.Count > 0) == 1 ? null : string.Create(CultureInfo.InvariantCulture, $"{name} {i + 1}");
                int? program = track.Programs.TryGetValue(groups[i][0].Channel, out var found) ? found : null;
                title ??= string.Create(CultureInfo.InvariantCulture, $"{GeneralMidi.FamilyOf(program)} {parts.Count + 1}");
                parts.Add(new PartTrack(title, program, groups[i], track.Wheels, neck));
            }
        }
        if (parts.Count > ImportLimits.MostParts) throw new RefusedFileException("The MIDI file has more parts than are taken.", "Export the parts you want on their own.");
        return parts;
    }

    // One channel, or one sound on several channels each of which has one note at a time: a string each.
    private static bool IsOnePlayer(MidiTrack track, List<MidiKey> keys)
    {
        var channels = keys.GroupBy(k => k.Channel).ToList();
        if (channels.Count == 1) return true;
        if (channels.Select(c => track.Programs.GetValueOrDefault(c.Key)).Distinct().Count() > 1 || channels.Count > 12) return false;
        return channels.TrueForAll(c => c.Zip(c.Skip(1)).All(p => p.First.Off <= p.Second.On + 2));
    }
}
