using System.Collections.Immutable;
using Fretlore.Binding.Form;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lessons;

/// <summary>A lesson as written, with the places of what it points at, to be checked once the song's bars are known.</summary>
internal sealed record BoundLesson(LessonPlan Plan, ImmutableArray<(Taught What, TextSpan Span)> PointsAt);

/// <summary>Binds the lesson: its budget, how fast the teacher speaks, the free excerpt, and its steps in teaching order.</summary>
internal sealed class LessonBinder(BindContext context, TaughtReader taught)
{
    private const int SlowestSpeech = 60, FastestSpeech = 300;

    private static readonly string[] StepWords = ["teach", "at", "as", "keep", "say"];

    private static readonly ImmutableArray<(string Word, StepLength Length)> Lengths =
        [("headline", StepLength.Headline), ("walk-through", StepLength.WalkThrough), ("note-by-note", StepLength.NoteByNote)];

    /// <summary>The sheet's lesson, or null when it has none.</summary>
    public static BoundLesson? Bind(SheetSyntax sheet, BindContext context, IReadOnlyCollection<string> riffs, SectionNames sections, IReadOnlyList<string> parts)
    {
        var lessons = sheet.Blocks.OfType<LessonSyntax>().ToArray();
        if (lessons.Length == 0) return null;
        foreach (var more in lessons.Skip(1)) context.Problems.Add(NameProblems.DeclaredTwice(more.Keyword, "lesson"));
        var taught = new TaughtReader(context.Problems, [.. riffs, .. context.RoadMaps.Keys, .. sections.Names], parts);
        return new LessonBinder(context, taught).Bind(lessons[0]);
    }

    private BoundLesson Bind(LessonSyntax lesson)
    {
        var plan = new LessonPlan(null, []);
        var steps = new List<LessonStep>();
        foreach (var setting in lesson.Settings)
        {
            var words = SheetWord.From(setting.Values);
            switch (setting.Word.Text)
            {
                case "budget":
                    plan = plan with { Budget = Budget(words, setting.Span) };
                    break;
                case "speaking-rate":
                    plan = plan with { SpeakingRate = SpeakingRate(words, setting.Span) };
                    break;
                case "excerpt":
                    plan = plan with { Excerpt = Excerpt(words, setting) };
                    break;
                case "step" when Step(words, setting) is { } step:
                    steps.Add(step);
                    break;
            }
        }
        return new BoundLesson(plan with { Steps = steps.ToValueList() }, taught.Read);
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

    private int? SpeakingRate(ImmutableArray<SheetWord> words, TextSpan span)
    {
        if (words.Length == 1 && Numerals.Of(words[0].Text) is { } rate and >= SlowestSpeech and <= FastestSpeech) return rate;
        context.Problems.Add(LessonProblems.NoSpeakingRate(span, SlowestSpeech, FastestSpeech));
        return null;
    }

    private Taught? Excerpt(ImmutableArray<SheetWord> words, SettingSyntax setting)
    {
        if (taught.Of(words, mayBeSong: true) is [var one]) return one;
        context.Problems.Add(LessonProblems.NoExcerpt(setting.Span));
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
        var found = context.Problems.Count;
        for (var i = 1; i < words.Length;)
        {
            var end = i + 1;
            if (words[i].Is("say")) end += end < words.Length && words[end].IsQuoted ? 1 : 0;
            else while (end < words.Length && (words[end].IsQuoted || !StepWords.Contains(words[end].Text))) end++;
            step = Clause(step, words[i], words[(i + 1)..end]);
            i = end;
        }
        // A name that is unknown was meant to be taught.
        if (step.Teaches.Count == 0 && step.Say is null && context.Problems.Count == found) context.Problems.Add(LessonProblems.StepTeachesNothing(setting.Span));
        return step;
    }

    private LessonStep Clause(LessonStep step, SheetWord word, ImmutableArray<SheetWord> values)
    {
        switch (word.Text)
        {
            case "teach":
                if (values.Length == 0) context.Problems.Add(LessonProblems.StepTeachesNothing(word.Span));
                return step with { Teaches = step.Teaches.Concat(taught.Of(values)).ToValueList() };
            case "at":
                return step with { SpeedPercents = step.SpeedPercents.Concat(Speeds(values, word)).ToValueList() };
            case "as" when values is [var length] && Lengths.FirstOrDefault(l => length.Is(l.Word)) is { Word: not null } known:
                return step with { Length = known.Length };
            case "as":
                context.Problems.Add(LessonProblems.NoStepLength(word.Span, Lengths.Select(l => l.Word)));
                return step;
            case "keep" when values.Length == 0:
                return step with { IsKept = true };
            case "say" when values is [{ IsQuoted: true } said]:
                return step with { Say = said.Text };
            case "say":
                context.Problems.Add(LessonProblems.SayNeedsQuotes(word.Span));
                return step;
            default:
                var unknown = word.Is("keep") ? values[0] : word;
                context.Problems.Add(LessonProblems.UnknownStepWord(unknown.Span, unknown.Text, StepWords));
                return step;
        }
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
