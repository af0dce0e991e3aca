using System.Collections.Immutable;
using Fretlore.Binding.Form;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lessons;

/// <summary>Binds the lesson: its budget and its steps in teaching order.</summary>
internal sealed class LessonBinder(BindContext context, IReadOnlyCollection<string> riffs, SectionNames sections)
{
    private readonly HashSet<string> known = [.. riffs, .. context.RoadMaps.Keys, .. sections.Names];

    private static readonly string[] StepWords = ["teach", "at", "say"];

    /// <summary>The sheet's lesson, or null when it has none.</summary>
    public static LessonPlan? Bind(SheetSyntax sheet, BindContext context, IReadOnlyCollection<string> riffs, SectionNames sections)
    {
        var lessons = sheet.Blocks.OfType<LessonSyntax>().ToArray();
        if (lessons.Length == 0) return null;
        foreach (var more in lessons.Skip(1)) context.Problems.Add(NameProblems.DeclaredTwice(more.Keyword, "lesson"));
        return new LessonBinder(context, riffs, sections).Bind(lessons[0]);
    }

    private LessonPlan Bind(LessonSyntax lesson)
    {
        TimeSpan? budget = null;
        var steps = new List<LessonStep>();
        foreach (var setting in lesson.Settings)
        {
            var words = SheetWord.From(setting.Values);
            if (setting.Word.Text == "budget") budget = Budget(words, setting.Span);
            else if (setting.Word.Text == "step" && Step(words, setting) is { } step) steps.Add(step);
        }
        return new LessonPlan(budget, steps.ToValueList());
    }

    private TimeSpan? Budget(ImmutableArray<SheetWord> words, TextSpan span)
    {
        if (words.Length == 1 && words[0].Text.Split(':') is [var minutes, { Length: 2 } seconds]
            && Numerals.Of(minutes) is { } m and <= 600 && Numerals.Of(seconds) is { } s and < 60 && m + s > 0)
        {
            return new TimeSpan(0, m, s);
        }
        context.Problems.Add(LessonProblems.NoBudget(span));
        return null;
    }

    // step "Main riff" teach furnace at 60% 80% 100% say "Watch the little finger."
    private LessonStep? Step(ImmutableArray<SheetWord> words, SettingSyntax setting)
    {
        if (words.Length == 0 || !words[0].IsQuoted)
        {
            context.Problems.Add(LessonProblems.StepNeedsTitle(setting.Span));
            return null;
        }
        var step = new LessonStep(words[0].Text, [], [], null);
        for (var i = 1; i < words.Length;)
        {
            var end = i + 1;
            if (words[i].Is("say")) end += end < words.Length && words[end].IsQuoted ? 1 : 0;
            else while (end < words.Length && (words[end].IsQuoted || !StepWords.Contains(words[end].Text))) end++;
            step = Clause(step, words[i], words[(i + 1)..end]);
            i = end;
        }
        if (step.Teaches.Count == 0 && step.Say is null) context.Problems.Add(LessonProblems.StepTeachesNothing(setting.Span));
        return step;
    }

    private LessonStep Clause(LessonStep step, SheetWord word, ImmutableArray<SheetWord> values)
    {
        switch (word.Text)
        {
            case "teach":
                return step with { Teaches = step.Teaches.Concat(Taught(values, word)).ToValueList() };
            case "at":
                return step with { SpeedPercents = step.SpeedPercents.Concat(Speeds(values, word)).ToValueList() };
            case "say" when values is [{ IsQuoted: true } said]:
                return step with { Say = said.Text };
            case "say":
                context.Problems.Add(LessonProblems.SayNeedsQuotes(word.Span));
                return step;
            default:
                context.Problems.Add(LessonProblems.UnknownStepWord(word.Span, word.Text, StepWords));
                return step;
        }
    }

    // Names stand between commas or blanks; a section's name may have blanks, so the longest known one is taken.
    private List<string> Taught(ImmutableArray<SheetWord> values, SheetWord teach)
    {
        var names = new List<string>();
        for (var i = 0; i < values.Length;)
        {
            if (values[i].Text == ",")
            {
                i++;
                continue;
            }
            var end = Math.Min(values.Length, i + 8);
            while (end > i + 1 && !known.Contains(SheetWord.Join(values[i..end]))) end--;
            var name = SheetWord.Join(values[i..end]);
            if (known.Contains(name)) names.Add(name);
            else context.Problems.Add(LessonProblems.UnknownToTeach(values[i].Span, name, known));
            i = end;
        }
        if (values.Length == 0) context.Problems.Add(LessonProblems.StepTeachesNothing(teach.Span));
        return names;
    }

    private List<int> Speeds(ImmutableArray<SheetWord> values, SheetWord at)
    {
        var speeds = new List<int>();
        foreach (var value in values)
        {
            if (value.Text == ",") continue;
            var percent = value.Text.EndsWith('%') ? Numerals.Of(value.Text[..^1]) : null;
            if (percent is >= 1 and <= 400) speeds.Add(percent.Value);
            else context.Problems.Add(LessonProblems.NoSpeed(value.Span, value.Text));
        }
        if (values.Length == 0) context.Problems.Add(LessonProblems.NoSpeed(at.Span, ""));
        return speeds;
    }
}
