using Fretlore.Guitar;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>One player's bars as they are read, before they have times.</summary>
internal sealed class ReadPart(string title, Tuning tuning, Capo capo)
{
    public string Title { get; } = title;

    public Tuning Tuning { get; } = tuning;

    public Capo Capo { get; } = capo;

    public List<ReadBar> Bars { get; } = [];

    /// <summary>Where sections begin: index into <see cref="Bars"/> and name.</summary>
    public List<(int Bar, string Name)> Sections { get; } = [];

    public StringState[] Strings { get; } = [.. Enumerable.Range(0, tuning.StringCount).Select(_ => new StringState())];
}
