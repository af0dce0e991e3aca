namespace Fretlore.Tests.Exchange.TextTab;

/// <summary>Plain-text tab as people post it; invented here.</summary>
internal static class PostedTab
{
    public const string LowRiff = """
        Tuning: drop D
        Tempo: 130 bpm

        INTRO

        e|-----------------|-----------------|
        B|-----------------|-----------------|
        G|-----------------|---------7-5-----|
        D|---------3-5-----|-----5-7-----7-5-|
        A|-----3-5-----5-3-|-3-5-------------|
        D|-0-0-------------|-----------------|  x2

        """;
}
