using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Keys of one part that are meant to be struck together.</summary>
internal sealed class MidiMoment
{
    /// <summary>Where the first of them is struck.</summary>
    public required long Tick { get; init; }

    public List<MidiKey> Keys { get; } = [];

    /// <summary>Grace notes before it, in order.</summary>
    public List<MidiKey> Graces { get; } = [];

    public Roll Roll { get; init; }

    public Stroke Stroke { get; init; }

    /// <summary>The bar it is written in; set when its rhythm is known, like <see cref="At"/>.</summary>
    public int Bar { get; set; }

    /// <summary>From the bar's start, as written.</summary>
    public Beats At { get; set; }
}
