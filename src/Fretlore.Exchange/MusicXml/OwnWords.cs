namespace Fretlore.Exchange.MusicXml;

/// <summary>What the standard has no element for, said in words that our reader knows again.</summary>
internal static class OwnWords
{
    /// <summary>Before the other fret of a trill.</summary>
    public const string Trill = "trill with fret ";

    public const string Rake = "rake";
}
