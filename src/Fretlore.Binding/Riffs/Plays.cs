using System.Collections.Immutable;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Finds the riffs that music plays, at any depth.</summary>
internal static class Plays
{
    public static IEnumerable<PlaySyntax> In(RiffSyntax riff)
    {
        var musics = riff.Variation?.Edits.Select(e => e.Music).OfType<MusicSyntax>() ?? [];
        return musics.Prepend(riff.Music).SelectMany(In);
    }

    /// <summary>In the order of the text.</summary>
    public static IEnumerable<PlaySyntax> In(MusicSyntax music)
    {
        var open = new Stack<SyntaxNode>();
        Push(open, music.Items);
        while (open.TryPop(out var node))
        {
            if (node is PlaySyntax play) yield return play;
            if (node is RepeatSyntax repeat)
            {
                for (var e = repeat.Endings.Length - 1; e >= 0; e--) Push(open, repeat.Endings[e].Items);
            }
            Push(open, Within(node));
        }
    }

    private static ImmutableArray<ItemSyntax> Within(SyntaxNode node) => node switch
    {
        SpanSyntax span => span.Items,
        RepeatSyntax repeat => repeat.Items,
        StrandSyntax strand => strand.Items,
        UpbeatSyntax upbeat => upbeat.Items,
        _ => [],
    };

    private static void Push(Stack<SyntaxNode> open, ImmutableArray<ItemSyntax> items)
    {
        for (var i = items.Length - 1; i >= 0; i--)
        {
            if (items[i] is PlaySyntax or SpanSyntax or RepeatSyntax or StrandSyntax or UpbeatSyntax) open.Push(items[i]);
        }
    }
}
