using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>What one track of a file holds.</summary>
internal sealed class MidiTrack
{
    public string? Name { get; set; }

    /// <summary>Its notes in order of their starts.</summary>
    public List<MidiKey> Keys { get; } = [];

    /// <summary>For each channel where the pitch wheel is moved, and to how many cents with the bend range in force.</summary>
    public Dictionary<int, List<(long Tick, double Cents)>> Wheels { get; } = [];

    /// <summary>For each channel the first program it is given.</summary>
    public Dictionary<int, int> Programs { get; } = [];

    public List<(long Tick, string Text)> Texts { get; } = [];

    /// <summary>What has no place in a sheet, and where it stands first.</summary>
    public Dictionary<string, long> LeftOut { get; } = [];

    public long End { get; set; }
}

/// <summary>What the tracks say of the song as a whole; in order of time when all are read.</summary>
internal sealed class MidiConductor
{
    public List<(long Tick, int Microseconds)> Tempos { get; } = [];

    public List<(long Tick, int Count, int Unit)> Metres { get; } = [];

    public List<(long Tick, int Signs, bool IsMinor)> Keys { get; } = [];

    public List<(long Tick, string Name)> Markers { get; } = [];

    /// <summary>Feels that are stated in words; the value that is swung, or null.</summary>
    public List<(long Tick, ValueBase? Swung)> Feels { get; } = [];

    public string? Rights { get; set; }

    /// <summary>Puts all in order of time; what stands at one tick keeps its order.</summary>
    public void Sort()
    {
        Sort(Tempos, t => t.Tick);
        Sort(Metres, m => m.Tick);
        Sort(Keys, k => k.Tick);
        Sort(Markers, m => m.Tick);
        Sort(Feels, f => f.Tick);
    }

    private static void Sort<T>(List<T> list, Func<T, long> tickOf)
    {
        var sorted = list.OrderBy(tickOf).ToList();
        list.Clear();
        list.AddRange(sorted);
    }
}
