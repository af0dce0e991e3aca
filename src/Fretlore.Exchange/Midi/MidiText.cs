using System.Text;
using NAudio.Midi;

namespace Fretlore.Exchange.Midi;

/// <summary>Text in a MIDI file: UTF-8, which the ASCII of the 1996 standard is a part of.</summary>
internal static class MidiText
{
    public static TextEvent Of(string text, MetaEventType type, long tick) => new("", type, tick) { Data = Encoding.UTF8.GetBytes(text) };
}
