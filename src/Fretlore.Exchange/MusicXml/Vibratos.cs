namespace Fretlore.Exchange.MusicXml;

/// <summary>Words for what MusicXML has no element for: when in a bend vibrato comes.</summary>
internal static class Vibratos
{
    /// <summary>Followed by the number of moves of the bend that come before the vibrato.</summary>
    public const string AfterMove = "vibrato after move ";
}
