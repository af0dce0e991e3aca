using System.Globalization;
using Fretlore.Guitar;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>The tuning and capos that a track states in words: with a channel a string they say where each note is played.</summary>
/// <param name="Tuning">The tuning.</param>
/// <param name="Capos">From which tick on a capo is where.</param>
/// <param name="Channels">The channel of each string, from the highest string to the lowest.</param>
/// <param name="Bars">How bars are written, in words, and where each begins; empty where that is not said.</param>
internal sealed record StatedNeck(Tuning Tuning, SortedDictionary<long, Capo> Capos, IReadOnlyList<int> Channels, List<(long Tick, string Words)> Bars)
{
    /// <summary>The word before a tuning.</summary>
    public const string TuningWord = "Tuning: ";

    /// <summary>The word before a capo.</summary>
    public const string CapoWord = "Capo: ";

    /// <summary>The word before the channels of the strings, from the lowest string to the highest.</summary>
    public const string StringsWord = "Strings on channels: ";

    private const int MostFrets = 12;

    /// <summary>What a track states; null when it does not say tuning and channels, or something that can't be.</summary>
    public static StatedNeck? Of(MidiTrack track, List<MidiKey> keys)
    {
        if (ValueOf(track, TuningWord) is not { } words || ValueOf(track, StringsWord) is not { } list) return null;
        if (!Tuning.TryParse(words, out var tuning) || tuning.StringCount is < 4 or > 9) return null;
        var channels = list.Split(' ').Select(w => int.TryParse(w, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0).ToList();
        if (channels.Count != tuning.StringCount || keys.Exists(k => !channels.Contains(k.Channel))) return null;
        var capos = new SortedDictionary<long, Capo>();
        foreach (var (tick, text) in track.Texts.Where(t => t.Text.StartsWith(CapoWord, StringComparison.Ordinal)))
        {
            if (Capo.TryParse(text[CapoWord.Length..], out var capo) && capo.Fret <= MostFrets && capo.Fits(tuning.StringCount)) capos[tick] = capo;
        }
        return new StatedNeck(tuning, capos, [.. Enumerable.Reverse(channels)],
            [.. track.Texts.Where(t => t.Text.StartsWith(BarWords.Word, StringComparison.Ordinal)).Select(t => (t.Tick, t.Text[BarWords.Word.Length..]))]);
    }

    /// <summary>The string that a channel is; null where several share it.</summary>
    public int? StringOf(int channel)
    {
        int? found = null;
        for (var i = 0; i < Channels.Count; i++)
        {
            if (Channels[i] != channel) continue;
            if (found is not null) return null;
            found = i + 1;
        }
        return found;
    }

    private static string? ValueOf(MidiTrack track, string word) =>
        track.Texts.Where(t => t.Text.StartsWith(word, StringComparison.Ordinal)).Select(t => t.Text[word.Length..]).FirstOrDefault();
}
