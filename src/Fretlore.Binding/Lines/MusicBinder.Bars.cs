using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <content>What begins, ends and fills whole bars.</content>
internal sealed partial class MusicBinder
{
    private readonly List<DraftBar> recent = [];
    private bool lastWasBarLine;

    private bool BarIsEmpty => main.Events.Count == 0 && !bar.HasSides;

    private void CloseBar(BarLineSyntax? sign = null)
    {
        if (BarIsEmpty)
        {
            if (sign is null) return;
            if (lastWasBarLine) Problems.Add(TimeProblems.EmptyBar(sign.Span));
            else if (sign.Sign.Text == "||" && flow.Bars.Count > 0) DoubleLastLine();
            return;
        }
        AddBar(isPickup: false, sign?.Sign.Text == "||" ? BarLine.Double : BarLine.Single);
        lastWasBarLine = sign is not null;
    }

    private void DoubleLastLine()
    {
        var last = flow.Bars[^1];
        flow.Bars[^1] = last with { Bar = last.Bar with { EndLine = BarLine.Double } };
    }

    private void AddBar(bool isPickup, BarLine endLine)
    {
        var made = bar.Build(main, notes.Neck, meter, isPickup, endLine, Problems);
        if (context.Limits.Take(1, 0, flow.Bars.Count + 1, made.Span, Problems))
        {
            flow.Add(made, made.Span, ++flow.WrittenCount);
            entries.Add(barEntry);
            Remember(made);
        }
        StartBar();
    }

    private void StartBar()
    {
        main.StartBar(Beats.Zero);
        barEntry = isRiff ? CurrentState() : EntryState.Unset;
    }

    private void Remember(DraftBar made)
    {
        recent.Add(made);
        if (recent.Count > 2) recent.RemoveAt(0);
    }

    private void BindUpbeat(UpbeatSyntax upbeat)
    {
        CloseBar();
        scope = Scope.Upbeat;
        Walk(upbeat.Items);
        scope = Scope.Line;
        if (BarIsEmpty) Problems.Add(TimeProblems.EmptyUpbeat(upbeat.Span));
        else AddBar(isPickup: true, BarLine.Single);
        EndBars();
    }

    private void BindRepeat(RepeatSyntax repeat)
    {
        CloseBar();
        var count = Numerals.Of(repeat.Count) ?? 1;
        if (count < 1) Problems.Add(FormProblems.NoTimes(repeat.Count.Span));
        var body = Apart(repeat.Items);
        var endings = repeat.Endings.Select(e => Apart(e.Items)).ToImmutableArray();
        var passes = EndingPasses.Read(repeat, count, Problems);
        EndBars();
        if (body.Bars.Count == 0 && endings.All(e => e.Bars.Count == 0))
        {
            if (!IsIncomplete) Problems.Add(FormProblems.NothingToRepeat(repeat.Word.Span));
            return;
        }
        var (bars, played) = ((long)body.Bars.Count * count, body.NoteCount * count);
        foreach (var ending in passes)
        {
            if (ending < 0) continue;
            bars += endings[ending].Bars.Count;
            played += endings[ending].NoteCount;
        }
        bars = Math.Max(bars, count);
        if (!context.Limits.Take(bars, played, flow.Bars.Count + bars, repeat.Word.Span, Problems)) return;
        Unroll(body, endings, passes, count);
    }

    private void Unroll(Flow body, ImmutableArray<Flow> endings, ImmutableArray<int> passes, int count)
    {
        var spans = ImmutableArray.CreateBuilder<PassSpan>(count);
        for (var pass = 0; pass < count; pass++)
        {
            var start = flow.Bars.Count;
            flow.Append(body, null, flow.WrittenCount);
            var ending = pass < passes.Length ? passes[pass] : -1;
            var offset = flow.WrittenCount + body.WrittenCount;
            for (var e = 0; e < ending; e++) offset += endings[e].WrittenCount;
            if (ending >= 0) flow.Append(endings[ending], null, offset);
            spans.Add(new PassSpan(start, body.Bars.Count, ending, ending < 0 ? 0 : endings[ending].Bars.Count));
        }
        flow.WrittenCount += body.WrittenCount + endings.Sum(e => e.WrittenCount);
        if (count > 1) flow.Repeats.Add(new RepeatSpan(spans.MoveToImmutable()));
    }

    private Flow Apart(ImmutableArray<ItemSyntax> items)
    {
        var outer = flow;
        flow = new Flow();
        lastWasBarLine = false;
        Walk(items);
        CloseBar();
        var made = flow;
        flow = outer;
        return made;
    }

    // A bar line after a play, a repeat or a rest only sets it apart from what comes.
    private void EndBars() => lastWasBarLine = false;

    private void BindPlay(PlaySyntax play)
    {
        CloseBar();
        EndBars();
        if (play.Name.IsMissing) return;
        var count = play.Count is null ? 1 : Numerals.Of(play.Count) ?? 1;
        if (count < 1) Problems.Add(FormProblems.NoTimes(play.Count!.Span));
        var riff = context.Riffs.Play(play, notes.Neck);
        if (riff is null || riff.Bars.Count == 0)
        {
            IsIncomplete = true;
            return;
        }
        var bars = (long)riff.Bars.Count * count;
        if (!context.Limits.Take(bars, riff.NoteCount * count, flow.Bars.Count + bars, play.Span, Problems)) return;
        var first = Decorated(riff.Bars[0].Bar);
        var changes = bar.TakeChanges();
        var passes = ImmutableArray.CreateBuilder<PassSpan>();
        for (var pass = 0; pass < count; pass++)
        {
            var start = flow.Bars.Count;
            flow.Append(riff, play.Span, flow.WrittenCount);
            var begin = pass == 0 && changes.Length > 0 ? first with { Changes = [.. changes, .. first.Changes] } : first;
            flow.Bars[start] = flow.Bars[start] with { Bar = begin };
            flow.Riffs.Add(new NamedSpan(play.Name.Text, start, riff.Bars.Count));
            passes.Add(new PassSpan(start, riff.Bars.Count, -1, 0));
        }
        if (count > 1) flow.Repeats.Add(new RepeatSpan(passes.ToImmutable()));
        flow.WrittenCount += riff.WrittenCount;
        for (var i = 0; i < riff.WrittenCount; i++) entries.Add(CurrentState());
        foreach (var played in riff.Bars.TakeLast(2)) Remember(played.Bar);
    }

    // Words, dynamics and a chord symbol before a riff stand at its first event.
    private DraftBar Decorated(DraftBar first)
    {
        if ((pendingWords, pendingChord, pendingDynamic, pendingFermata) is (null, null, null, false)) return first;
        if (first.Strands.Length == 0 || first.Strands[0].Events.Length == 0) return first;
        var strand = first.Strands[0];
        var begin = strand.Events[0];
        var decorated = begin with
        {
            Event = begin.Event with
            {
                Words = pendingWords ?? begin.Event.Words,
                ChordSymbol = pendingChord ?? begin.Event.ChordSymbol,
                Dynamic = pendingDynamic ?? begin.Event.Dynamic,
                HasFermata = pendingFermata || begin.Event.HasFermata,
            },
            SymbolSpan = pendingChord is null ? begin.SymbolSpan : pendingChordSpan,
        };
        (pendingDynamic, pendingWords, pendingChord, pendingFermata) = (null, null, null, false);
        return first with { Strands = first.Strands.SetItem(0, new DraftStrand(strand.Kind, strand.Events.SetItem(0, decorated))) };
    }

    private void BindRoadMapUse(RoadMapUseSyntax use)
    {
        CloseBar();
        EndBars();
        if (use.Name.IsMissing) return;
        if (!context.RoadMaps.ContainsKey(use.Name.Text))
        {
            Problems.Add(NameProblems.UnknownRoadMap(use.Name, context.RoadMaps.Keys));
        }
        var count = Numerals.Of(use.Count) ?? 0;
        if (count < 1)
        {
            IsIncomplete = true;
            if (!use.Count.IsMissing) Problems.Add(FormProblems.NoTimes(use.Count.Span));
            return;
        }
        flow.RoadMaps.Add(new NamedSpan(use.Name.Text, flow.Bars.Count, count));
        AddEmptyBars(BarKind.RoadMap, count, use.Span, use.Name.Text);
    }

    private void BindRest(RestBarsSyntax rest)
    {
        CloseBar();
        EndBars();
        var count = rest.Count is null ? 1 : Numerals.Of(rest.Count) ?? 1;
        if (count < 1) Problems.Add(FormProblems.NoTimes(rest.Count!.Span));
        main.Sounding = [];
        AddEmptyBars(BarKind.Rest, count, rest.Span, null);
    }

    private void AddEmptyBars(BarKind kind, int count, TextSpan span, string? roadMap)
    {
        if (!context.Limits.Take(count, 0, (long)flow.Bars.Count + count, span, Problems)) return;
        var changes = bar.TakeChanges();
        var empty = new DraftBar { Kind = kind, Neck = notes.Neck, Span = span, RoadMap = roadMap, Meter = meter };
        for (var i = 0; i < count; i++)
        {
            var made = kind == BarKind.RoadMap ? empty with { RoadMapBar = i } : empty;
            if (i == 0) made = made with { Changes = changes };
            flow.Add(made, span, ++flow.WrittenCount);
            entries.Add(CurrentState());
            Remember(made);
        }
    }

    private void BindAgain(AgainSyntax again)
    {
        CloseBar();
        EndBars();
        var count = again.Count is null ? 1 : Numerals.Of(again.Count) ?? 1;
        if (count is not (1 or 2))
        {
            Problems.Add(FormProblems.AgainCount(again.Count!.Span));
            return;
        }
        if (recent.Count < count || recent.TakeLast(count).Any(b => b.Kind != BarKind.Music))
        {
            Problems.Add(FormProblems.NothingToPlayAgain(again.Span, count));
            IsIncomplete = true;
            return;
        }
        var copies = recent.TakeLast(count).ToArray();
        if (!context.Limits.Take(count, copies.Sum(b => b.NoteCount), flow.Bars.Count + count, again.Span, Problems)) return;
        var changes = bar.TakeChanges();
        for (var i = 0; i < count; i++)
        {
            var copy = copies[i] with { Repeats = count, Changes = i == 0 ? changes : [], EndLine = BarLine.Single };
            flow.Add(copy, again.Span, ++flow.WrittenCount);
            entries.Add(CurrentState());
            Remember(copy);
        }
    }
}
