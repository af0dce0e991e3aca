using System.Collections.Immutable;

namespace Fretlore.Syntax.Formatting;

/// <summary>Finds where time and place have to be said again so that each bar can be read, and copied, on its own.</summary>
/// <remarks>
/// What is in force is the latest time and place written in the same strand. A bar gets the time again when something sounds in it before
/// any time is set, and the place when a fret is played before any place is set. Nothing is put before the first bar line: a bar that
/// starts from nothing, or a replaced bar that starts from what its base had, keeps its meaning.
/// </remarks>
internal sealed class Restatement
{
    private readonly Dictionary<SyntaxNode, ImmutableArray<string>> inserted = [];
    private readonly Dictionary<string, Strand> sides = [];
    private readonly Strand main = new();
    private Strand strand;

    private Restatement() => strand = main;

    public static IReadOnlyDictionary<SyntaxNode, ImmutableArray<string>> In(MusicSyntax music)
    {
        var restatement = new Restatement();
        restatement.Walk(music.Items);
        restatement.EndBars();
        return restatement.inserted;
    }

    /// <summary>What is in force in a strand, and what its bar has shown so far.</summary>
    private sealed class Strand
    {
        public string? Time { get; set; }

        public string? Place { get; set; }

        /// <summary>What was in force when the bar began; null before the first bar line.</summary>
        public (string? Time, string? Place)? Entry { get; set; }

        public bool HasTime { get; set; }

        public bool HasPlace { get; set; }

        public bool NeedsTime { get; set; }

        public bool NeedsPlace { get; set; }

        /// <summary>The bar's first item, and its first that is no place: what is said again goes before them.</summary>
        public SyntaxNode? First { get; set; }

        public SyntaxNode? FirstAfterPlaces { get; set; }
    }

    private void Walk<T>(ImmutableArray<T> items) where T : SyntaxNode
    {
        foreach (var item in items) Visit(item);
    }

    private void Visit(SyntaxNode item)
    {
        switch (item)
        {
            case BarLineSyntax or PlaySyntax or RoadMapUseSyntax or RestBarsSyntax or AgainSyntax:
                EndBars();
                return;
            case RepeatSyntax repeat:
                EndBars();
                Walk(repeat.Items);
                foreach (var ending in repeat.Endings)
                {
                    EndBars();
                    Walk(ending.Items);
                }
                EndBars();
                return;
            case UpbeatSyntax upbeat:
                EndBars();
                Walk(upbeat.Items);
                EndBars();
                return;
        }
        strand.First ??= item;
        if (item is not WhereSyntax) strand.FirstAfterPlaces ??= item;
        switch (item)
        {
            case TimeSyntax time:
                strand.Time = time.ToFullString()[time.Values.LeadingTrivia.Length..];
                strand.HasTime = true;
                break;
            case WhereSyntax where:
                strand.Place = string.Concat(where.Children.Cast<SyntaxToken>().Select(t => t.Text));
                strand.HasPlace = true;
                break;
            case PhraseSyntax phrase:
                Sound(phrase.Pieces.Any(IsPlacedByStrand));
                break;
            case PickSyntax pick:
                if (pick.Shape is ChordSyntax) strand.NeedsPlace |= !strand.HasPlace;
                Walk(pick.Items);
                break;
            case PickStringsSyntax or RestSyntax or HoldSyntax:
                Sound(needsPlace: false);
                break;
            case StrandSyntax side:
                Side(side);
                break;
            case SpanSyntax span:
                Walk(span.Items);
                break;
        }
    }

    private void Side(StrandSyntax group)
    {
        if (!sides.TryGetValue(group.Word.Text, out var side)) sides[group.Word.Text] = side = new Strand();
        var outer = strand;
        strand = side;
        Walk(group.Items);
        strand = outer;
    }

    private void Sound(bool needsPlace)
    {
        strand.NeedsTime |= !strand.HasTime;
        strand.NeedsPlace |= needsPlace && !strand.HasPlace;
    }

    /// <summary>At a bar line, and around what fills whole bars of its own.</summary>
    private void EndBars()
    {
        EndBar(strand);
        if (strand != main) return;
        foreach (var side in sides.Values) EndBar(side);
    }

    /// <summary>Frets without a place of their own, and brackets, are where the strand is.</summary>
    private static bool IsPlacedByStrand(SyntaxNode piece) =>
        piece is EventSyntax { Sound: ChordSyntax or NoteSyntax { At: null } };

    private void EndBar(Strand ended)
    {
        if (ended.Entry is var (time, place) && ended.First is not null)
        {
            if (ended.NeedsPlace && place is not null) Insert(ended.First, place);
            if (ended.NeedsTime && time is not null) Insert(ended.FirstAfterPlaces!, time);
        }
        ended.Entry = (ended.Time, ended.Place);
        (ended.HasTime, ended.HasPlace, ended.NeedsTime, ended.NeedsPlace) = (false, false, false, false);
        (ended.First, ended.FirstAfterPlaces) = (null, null);
    }

    private void Insert(SyntaxNode before, string state) =>
        inserted[before] = inserted.TryGetValue(before, out var there) ? there.Add(state) : [state];
}
