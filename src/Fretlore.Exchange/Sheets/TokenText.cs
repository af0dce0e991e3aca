using System.Collections.Immutable;
using System.Text;

namespace Fretlore.Exchange.Sheets;

/// <summary>Writes tokens out with the spans they stand in.</summary>
internal static class TokenText
{
    private sealed record Run(int First, int Last, string Open, string Close, SpanWord? Word)
    {
        public bool Crosses(Run other) =>
            First < other.First && other.First <= Last && Last < other.Last || other.First < First && First <= other.Last && other.Last < Last;
    }

    /// <summary>One string a bar, each with its bar line.</summary>
    public static List<string> Bars(ImmutableArray<Token> tokens)
    {
        var bars = new List<string>();
        var bar = new StringBuilder();
        Write(tokens, bar, () =>
        {
            bars.Add(bar.ToString());
            bar.Clear();
        });
        if (bar.Length > 0) bars.Add(bar.ToString());
        return bars;
    }

    private static void Write(ImmutableArray<Token> tokens, StringBuilder text, Action barEnds)
    {
        var runs = RunsOf(tokens);
        var muted = new bool[tokens.Length];
        foreach (var run in runs.Where(r => r.Word == SpanWord.Pm)) Array.Fill(muted, true, run.First, run.Last - run.First + 1);
        var mayGlue = false;
        for (var i = 0; i < tokens.Length; i++)
        {
            var token = tokens[i];
            if (token.Prefix.Length > 0) (mayGlue, _) = (false, Blank(text).Append(token.Prefix));
            foreach (var run in runs.Where(r => r.First == i)) (mayGlue, _) = (false, Blank(text).Append(run.Open));
            if (token.Joint.Length == 0 || !mayGlue) Blank(text);
            text.Append(token.Joint);
            var covered = runs.Where(r => r.Word is not null && r.First <= i && i <= r.Last).Select(r => r.Word!.Value).ToList();
            if (token.Inner.IsEmpty) text.Append(muted[i] ? token.Text : token.Muted ?? token.Text).Append(token.Suffix);
            else
            {
                text.Append(token.Text).Append('{');
                Write([.. token.Inner.Select(t => Covered(t, covered))], text, () => { });
                text.Append(" }");
            }
            mayGlue = token.Inner.IsEmpty && !token.IsBarLine && token.Suffix.Length == 0;
            foreach (var run in runs.Where(r => r.Last == i).Reverse()) (mayGlue, _) = (false, Blank(text).Append(run.Close));
            if (token.IsBarLine) barEnds();
        }
    }

    // What the span around a strand already says is not said again within it.
    private static Token Covered(Token token, List<SpanWord> words)
    {
        if (words.Count == 0) return token;
        var needs = token.Needs;
        foreach (var word in words) needs = needs.SetItem((int)word, Need.Any);
        return token with { Needs = needs, Muted = words.Contains(SpanWord.Pm) ? null : token.Muted };
    }

    private static StringBuilder Blank(StringBuilder text) => text.Length > 0 && text[^1] != ' ' ? text.Append(' ') : text;

    // Braces where they nest; where they would cross, the shorter one is switched on and off.
    private static List<Run> RunsOf(ImmutableArray<Token> tokens)
    {
        var found = FingerRuns(tokens);
        foreach (var word in Enum.GetValues<SpanWord>())
        {
            var name = word.ToString().ToLowerInvariant();
            found.AddRange(Stretches(tokens, word).Select(s => new Run(s.First, s.Last, name + "{", "}", word)));
        }
        var runs = new List<Run>();
        foreach (var run in found.OrderByDescending(r => r.Word is null).ThenByDescending(r => r.Last - r.First))
        {
            var crosses = runs.Exists(r => r.Open.EndsWith('{') && r.Crosses(run));
            var name = run.Open.TrimEnd('{');
            runs.Add(crosses ? run with { Open = name + " on", Close = name + " off" } : run);
        }
        return [.. runs.OrderBy(r => r.Open.EndsWith('{')).ThenByDescending(r => r.Last - r.First)];
    }

    private static IEnumerable<(int First, int Last)> Stretches(ImmutableArray<Token> tokens, SpanWord word)
    {
        var (first, last, count) = (-1, -1, 0);
        for (var i = 0; i <= tokens.Length; i++)
        {
            var need = i == tokens.Length ? Need.MustNot : tokens[i].NeedOf(word);
            if (need == Need.Must)
            {
                if (first < 0) first = i;
                last = i;
                count++;
            }
            else if (need == Need.MustNot)
            {
                // One muted note is marked; a span is for several.
                if (first >= 0 && (word != SpanWord.Pm || count > 1 || tokens[first].Muted is null)) yield return (first, last);
                (first, count) = (-1, 0);
            }
        }
    }

    private static List<Run> FingerRuns(ImmutableArray<Token> tokens)
    {
        var runs = new List<Run>();
        var (first, last) = (-1, -1);
        for (var i = 0; i <= tokens.Length; i++)
        {
            var stops = i == tokens.Length || tokens[i].StopsFingers;
            if (!stops && tokens[i].Inner.IsEmpty && tokens[i].Fingers is { Length: > 0 })
            {
                if (first < 0) first = i;
                last = i;
            }
            else if (stops && first >= 0)
            {
                var letters = string.Concat(tokens.Skip(first).Take(last - first + 1).Where(t => t.Inner.IsEmpty).Select(t => t.Fingers));
                runs.Add(new Run(first, last, $"by {Period(letters)}{{", "}", null));
                first = -1;
            }
        }
        return runs;
    }

    private static string Period(string letters)
    {
        for (var length = 1; length < letters.Length; length++)
        {
            var fits = true;
            for (var i = length; i < letters.Length && fits; i++) fits = letters[i] == letters[i - length];
            if (fits) return letters[..length];
        }
        return letters;
    }
}
