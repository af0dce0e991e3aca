using System.Collections.Immutable;
using System.Text;

namespace Fretlore.Syntax.Formatting;

/// <summary>Cuts music into chunks, with the time and place in force put at the start of each bar.</summary>
internal sealed class Chunks
{
    private readonly List<Chunk> made = [];
    private readonly IReadOnlyDictionary<SyntaxNode, ImmutableArray<string>> restated;
    private readonly StringBuilder text = new();
    private Trivia? before;
    private bool triviaIsWritten;
    private int depth;

    private Chunks(IReadOnlyDictionary<SyntaxNode, ImmutableArray<string>> restated) => this.restated = restated;

    public static IReadOnlyList<Chunk> Of(MusicSyntax music)
    {
        var chunks = new Chunks(Restatement.In(music));
        foreach (var item in music.Items) chunks.Item(item);
        chunks.Flush();
        return chunks.made;
    }

    public static IReadOnlyList<Chunk> Of(ChordSyntax bracket)
    {
        var chunks = new Chunks(ImmutableDictionary<SyntaxNode, ImmutableArray<string>>.Empty);
        chunks.Item(bracket);
        chunks.Flush();
        return chunks.made;
    }

    private void Item(SyntaxNode item)
    {
        if (restated.TryGetValue(item, out var state)) Restate(state, FirstToken(item));
        switch (item)
        {
            case SpanSyntax span:
                Head(span.Children.Length - span.Items.Length - 2, item);
                Group(span.Items, item);
                break;
            case StrandSyntax strand:
                Head(1, item);
                Group(strand.Items, item);
                break;
            case UpbeatSyntax upbeat:
                Head(1, item);
                Group(upbeat.Items, item);
                break;
            case RepeatSyntax repeat:
                Head(2, item);
                Group<SyntaxNode>([.. repeat.Items, .. repeat.Endings], item);
                break;
            case EndingSyntax ending:
                Begin((SyntaxToken)ending.Children[0]);
                for (var i = 0; i < ending.Passes.Length; i++) Add(ending.Passes[i], i == 0 ? " " : "");
                Group(ending.Items, item);
                break;
            case PickSyntax pick:
                Begin(pick.Word);
                Tight(pick.Shape, " ");
                Group(pick.Items, item);
                break;
            case ChangeSyntax change:
                Change(change);
                break;
            case PlaySyntax or RoadMapUseSyntax or RestBarsSyntax or AgainSyntax or SwitchSyntax:
                Head(item.Children.Length, item);
                break;
            default:
                Begin(FirstToken(item));
                Tight(item, "", isBegun: true);
                break;
        }
    }

    /// <summary>The comments and the line end before an item go before what is now the start of its bar.</summary>
    private void Restate(ImmutableArray<string> state, SyntaxToken first)
    {
        for (var i = 0; i < state.Length; i++)
        {
            Flush();
            before = i == 0 ? Trivia.Of(first) : null;
            text.Append(state[i]);
        }
        triviaIsWritten = true;
    }

    /// <summary>The first tokens of an item, a blank between; none before a comma.</summary>
    private void Head(int count, SyntaxNode item)
    {
        for (var i = 0; i < count; i++)
        {
            var token = (SyntaxToken)item.Children[i];
            if (i == 0) Begin(token);
            else Add(token, token.Text == "," ? "" : " ");
        }
    }

    /// <summary>The brace that opens a group, its items, and the brace that closes it.</summary>
    private void Group<T>(ImmutableArray<T> items, SyntaxNode group) where T : SyntaxNode
    {
        Add(group.Children.OfType<SyntaxToken>().First(t => t.Text == "{"), "");
        Flush();
        depth++;
        foreach (var item in items) Item(item);
        Flush();
        depth--;
        Begin((SyntaxToken)group.Children[^1]);
    }

    private void Change(ChangeSyntax change)
    {
        Begin((SyntaxToken)change.Children[0]);
        for (var i = 0; i < change.Tokens.Length; i++)
        {
            var token = change.Tokens[i];
            var isEquals = token.Text == "=" || (i > 0 && change.Tokens[i - 1].Text == "=");
            Add(token, i == 0 ? "" : isEquals || token.LeadingTrivia.Length > 0 ? " " : "");
        }
        Add((SyntaxToken)change.Children[^1], "");
    }

    /// <summary>A node whose tokens touch, but for a blank between the slots of a bracket.</summary>
    private void Tight(SyntaxNode node, string gap, bool isBegun = false)
    {
        foreach (var child in node.Children)
        {
            var isSlot = node is ChordSyntax chord && child is SyntaxNode slot && child is not MarkSyntax && slot != chord.Slots[0];
            var before = isSlot ? " " : gap;
            if (child is SyntaxNode inner) Tight(inner, before, isBegun);
            else if (!isBegun) Add((SyntaxToken)child, before);
            (gap, isBegun) = ("", false);
        }
    }

    private void Begin(SyntaxToken token)
    {
        Flush();
        before = triviaIsWritten ? null : Trivia.Of(token);
        triviaIsWritten = false;
        text.Append(token.Text);
    }

    private void Add(SyntaxToken token, string gap)
    {
        // A comment within what should be one chunk parts it, and nothing else does.
        if (Trivia.Of(token).Comments.Count > 0) Begin(token);
        else text.Append(gap).Append(token.Text);
    }

    private void Flush()
    {
        if (text.Length > 0) made.Add(new Chunk(text.ToString(), before, depth));
        text.Clear();
    }

    private static SyntaxToken FirstToken(SyntaxNode node)
    {
        while (node.Children[0] is SyntaxNode child) node = child;
        return (SyntaxToken)node.Children[0];
    }
}
