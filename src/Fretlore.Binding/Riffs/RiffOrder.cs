using Fretlore.Binding.Problems;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>An order in which each riff comes after those it plays or varies, and the plays that make this impossible.</summary>
internal sealed class RiffOrder
{
    /// <summary>Riffs that play riffs that play riffs: deeper than any song needs.</summary>
    public const int DeepestNesting = 32;

    private readonly Dictionary<string, RiffSyntax> riffs;
    private readonly DiagnosticBag problems;
    private readonly Dictionary<string, int> depths = [];
    private readonly HashSet<string> open = [];

    private RiffOrder(Dictionary<string, RiffSyntax> riffs, DiagnosticBag problems)
    {
        this.riffs = riffs;
        this.problems = problems;
    }

    public List<RiffSyntax> Riffs { get; } = [];

    /// <summary>Plays and variations that have been reported and must not be followed.</summary>
    public HashSet<SyntaxNode> Refused { get; } = [];

    public static RiffOrder Of(Dictionary<string, RiffSyntax> riffs, DiagnosticBag problems)
    {
        var order = new RiffOrder(riffs, problems);
        foreach (var riff in riffs.Values) order.Visit(riff);
        return order;
    }

    private sealed record Frame(RiffSyntax Riff, List<(SyntaxNode Node, SyntaxToken Name)> Uses)
    {
        public int Next { get; set; }

        public int Depth { get; set; } = 1;
    }

    // Depth first with a stack of our own: a chain of riffs may be as long as the sheet.
    private void Visit(RiffSyntax first)
    {
        if (depths.ContainsKey(first.Name.Text)) return;
        var stack = new Stack<Frame>();
        stack.Push(Open(first));
        while (stack.TryPeek(out var frame))
        {
            if (frame.Next == frame.Uses.Count)
            {
                stack.Pop();
                open.Remove(frame.Riff.Name.Text);
                depths[frame.Riff.Name.Text] = frame.Depth;
                Riffs.Add(frame.Riff);
                continue;
            }
            var (node, name) = frame.Uses[frame.Next];
            if (!riffs.TryGetValue(name.Text, out var used)) frame.Next++;
            else if (open.Contains(name.Text)) Refuse(frame, node, FormProblems.RiffPlaysItself(name.Span, frame.Riff.Name.Text, name.Text));
            else if (!depths.TryGetValue(name.Text, out var depth)) stack.Push(Open(used));
            else if (depth >= DeepestNesting) Refuse(frame, node, FormProblems.RiffsNestTooDeep(name.Span, DeepestNesting));
            else
            {
                frame.Depth = Math.Max(frame.Depth, depth + 1);
                frame.Next++;
            }
        }
    }

    private void Refuse(Frame frame, SyntaxNode node, Diagnostic problem)
    {
        problems.Add(problem);
        Refused.Add(node);
        frame.Next++;
    }

    private Frame Open(RiffSyntax riff)
    {
        open.Add(riff.Name.Text);
        var uses = Plays.In(riff).Select(p => ((SyntaxNode)p, p.Name)).ToList();
        if (riff.Variation is { } variation) uses.Insert(0, (variation, variation.BaseName));
        return new Frame(riff, uses);
    }
}
