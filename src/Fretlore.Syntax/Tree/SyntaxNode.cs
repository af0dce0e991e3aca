using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text;

namespace Fretlore.Syntax;

/// <summary>A node of the lossless tree: its children in the order of the text.</summary>
public abstract class SyntaxNode : SyntaxElement
{
    /// <param name="children">Elements, lists of elements, or null for what is absent; in the order of the text.</param>
    private protected SyntaxNode(params ReadOnlySpan<object?> children)
    {
        if (children is [SyntaxElement[] all])
        {
            Children = ImmutableCollectionsMarshal.AsImmutableArray(all);
            Span = SpanOf(Children);
            return;
        }
        var count = 0;
        foreach (var child in children) count += child is SyntaxElement ? 1 : child is SyntaxElement[] run ? run.Length : child is IReadOnlyCollection<SyntaxElement> list ? list.Count : 0;
        var flat = new SyntaxElement[count];
        var next = 0;
        foreach (var child in children)
        {
            if (child is SyntaxElement element) flat[next++] = element;
            else if (child is SyntaxElement[] run)
            {
                run.CopyTo(flat, next);
                next += run.Length;
            }
            else if (child is IReadOnlyList<SyntaxElement> list)
            {
                for (var i = 0; i < list.Count; i++) flat[next++] = list[i];
            }
        }
        Children = ImmutableCollectionsMarshal.AsImmutableArray(flat);
        Span = SpanOf(Children);
    }

    public ImmutableArray<SyntaxElement> Children { get; }

    public override TextSpan Span { get; }

    /// <summary>A list as it is handed to the constructor most cheaply: music has one for each phrase, and two for each note.</summary>
    private protected static SyntaxElement[]? Run<T>(ImmutableArray<T> list) where T : SyntaxElement => ImmutableCollectionsMarshal.AsArray(list);

    /// <summary>From the first child that stands in the text to the last; an empty node, such as the music of a variation, stands nowhere.</summary>
    private static TextSpan SpanOf(ImmutableArray<SyntaxElement> children)
    {
        var (first, last) = (0, children.Length - 1);
        while (first <= last && children[first] is SyntaxNode { Children.Length: 0 }) first++;
        while (last > first && children[last] is SyntaxNode { Children.Length: 0 }) last--;
        return first > last ? default : TextSpan.FromBounds(children[first].Span.Start, children[last].Span.End);
    }

    public override void WriteTo(StringBuilder text)
    {
        foreach (var child in Children) child.WriteTo(text);
    }

    /// <summary>This node and all nodes below it, in the order of the text.</summary>
    public IEnumerable<SyntaxNode> DescendantsAndSelf()
    {
        var stack = new Stack<SyntaxNode>();
        stack.Push(this);
        while (stack.TryPop(out var node))
        {
            yield return node;
            for (var i = node.Children.Length - 1; i >= 0; i--)
            {
                if (node.Children[i] is SyntaxNode child) stack.Push(child);
            }
        }
    }
}
