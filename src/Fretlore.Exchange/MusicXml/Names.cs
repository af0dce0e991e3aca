using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>MusicXML's words for values, modes and dynamics.</summary>
internal static class Names
{
    public static string TypeOf(ValueBase value) => value switch
    {
        ValueBase.Whole => "whole",
        ValueBase.Half => "half",
        ValueBase.Quarter => "quarter",
        ValueBase.Eighth => "eighth",
        ValueBase.Sixteenth => "16th",
        ValueBase.ThirtySecond => "32nd",
        _ => "64th",
    };

    public static string ModeOf(Key key) => key.IsMajorMinor
        ? key.Mode == Mode.Ionian ? "major" : "minor"
        : key.Mode.ToString().ToLowerInvariant();

    public static string FingerOf(Finger finger) => finger == Finger.Thumb ? "T" : XmlOutput.Digits((int)finger);

    public static string DynamicOf(Dynamic dynamic) => dynamic switch
    {
        Dynamic.Pianissimo => "pp",
        Dynamic.Piano => "p",
        Dynamic.MezzoPiano => "mp",
        Dynamic.MezzoForte => "mf",
        Dynamic.Forte => "f",
        _ => "ff",
    };
}
