namespace Fretlore.Exchange.Midi.Reading;

/// <summary>A key of a channel, down from one tick to a later one.</summary>
internal sealed class MidiKey
{
    /// <summary>1 to 16.</summary>
    public required int Channel { get; init; }

    /// <summary>Semitones above C-1, 0 to 127.</summary>
    public required int Number { get; init; }

    public required long On { get; init; }

    public long Off { get; set; }
}
