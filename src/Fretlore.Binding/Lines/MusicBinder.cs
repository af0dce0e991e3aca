using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>The time and place of each strand where a bar begins.</summary>
internal sealed record EntryState(StrandState Main, ImmutableDictionary<StrandKind, StrandState> Sides)
{
    public static EntryState Unset { get; } = new(StrandState.Unset, ImmutableDictionary<StrandKind, StrandState>.Empty);
}

/// <summary>Walks one line of music, a riff's or a part's, and makes its bars.</summary>
internal sealed partial class MusicBinder
{
    private const int DeepestNesting = 64;

    private readonly BindContext context;
    private readonly NoteBinder notes;
    private readonly PlayFlags flags = new();
    private readonly BarDraftBuilder bar = new();
    private readonly StrandCursor main;
    private readonly Dictionary<StrandKind, StrandCursor> sides = [];
    private readonly List<EntryState> entries = [];
    private readonly bool isRiff;
    private Meter? meter;
    private StrandCursor cursor;
    private Scope scope = Scope.Line;
    private Flow flow = new();
    private EntryState barEntry;
    private int depth;

    /// <param name="context">The sheet.</param>
    /// <param name="neck">The neck of the part or riff.</param>
    /// <param name="meter">The metre of a riff's bars; null in a section, whose bars take the song's.</param>
    /// <param name="entry">Time and place in force at the start.</param>
    public MusicBinder(BindContext context, Neck neck, Meter? meter, EntryState entry)
    {
        this.context = context;
        this.meter = meter;
        isRiff = meter is not null;
        notes = new NoteBinder(context.Problems) { Neck = neck };
        main = new StrandCursor(StrandKind.Main, entry.Main);
        cursor = main;
        barEntry = entry;
        foreach (var (kind, state) in entry.Sides) sides[kind] = new StrandCursor(kind, state);
    }

    private enum Scope
    {
        Line,
        Upbeat,
        Strand,
    }

    /// <summary>The neck at the end of the line.</summary>
    public Neck Neck => notes.Neck;

    /// <summary>For each written bar the time and place in force at its start.</summary>
    public IReadOnlyList<EntryState> Entries => entries;

    /// <summary>True when a riff of the line could not be found or played, so that bars are missing.</summary>
    public bool IsIncomplete { get; private set; }

    private DiagnosticBag Problems => context.Problems;

    public Flow Bind(MusicSyntax music)
    {
        Walk(music.Items);
        CloseBar();
        foreach (var word in flags.LeftOn) Problems.Add(FormProblems.SwitchLeftOn(word.Span, word.Text));
        ReportLeftovers();
        return flow;
    }

    private void Walk(ImmutableArray<ItemSyntax> items)
    {
        if (depth >= DeepestNesting)
        {
            if (items.Length > 0) Problems.Add(FormProblems.NestedTooDeep(items[0].Span));
            IsIncomplete = true;
            return;
        }
        depth++;
        foreach (var item in items) Bind(item);
        depth--;
    }

    private void Bind(ItemSyntax item)
    {
        switch (item)
        {
            case TimeSyntax time:
                SetTime(time);
                break;
            case WhereSyntax where:
                SetPlace(where);
                break;
            case PhraseSyntax phrase:
                BindPhrase(phrase);
                break;
            case PickSyntax pick:
                BindPick(pick);
                break;
            case SpanSyntax span:
                BindSpan(span);
                break;
            case SwitchSyntax change:
                BindSwitch(change);
                break;
            case ChangeSyntax change:
                BindChange(change);
                break;
            case WordsSyntax words:
                pendingWords = Words.SheetWord.Unquote(words.Text.Text);
                pendingSpan = words.Span;
                break;
            case StrandSyntax strand:
                BindStrand(strand);
                break;
            case StrayItemSyntax:
                bar.Break();
                break;
            default:
                BindBars(item);
                break;
        }
    }

    // What takes whole bars can stand only between bars of the main line.
    private void BindBars(ItemSyntax item)
    {
        if (scope != Scope.Line)
        {
            Problems.Add(FormProblems.BarsWithinBar(item.Span, scope == Scope.Strand));
            return;
        }
        switch (item)
        {
            case BarLineSyntax line:
                CloseBar(line);
                break;
            case UpbeatSyntax upbeat:
                BindUpbeat(upbeat);
                break;
            case RepeatSyntax repeat:
                BindRepeat(repeat);
                break;
            case PlaySyntax play:
                BindPlay(play);
                break;
            case RoadMapUseSyntax use:
                BindRoadMapUse(use);
                break;
            case RestBarsSyntax rest:
                BindRest(rest);
                break;
            case AgainSyntax again:
                BindAgain(again);
                break;
        }
    }

    private void SetTime(TimeSyntax time)
    {
        if (TimeCell.Read(time, Problems) is { } cell) cursor.SetTime(cell);
        else bar.Break();
    }

    private void SetPlace(WhereSyntax where)
    {
        var place = Places.Read(where, notes.Neck, Problems);
        if (place.Length > 0) cursor.Place = place;
    }

    private void BindSpan(SpanSyntax span)
    {
        if (PlayFlags.KindOf(span.Word.Text) is { } kind)
        {
            flags.Open(kind);
            Walk(span.Items);
            flags.Close(kind);
        }
        else if (span.Word.Text == "by")
        {
            var before = flags.Fingers;
            flags.Fingers = new Cycle(ReadFingers(span));
            Walk(span.Items);
            flags.Fingers = before;
        }
        else
        {
            var before = flags.Strokes;
            var strokes = span.Word.Text.AsSpan().ContainsAnyExcept('d', 'u') ? "" : span.Word.Text;
            flags.Strokes = new Cycle(strokes);
            Walk(span.Items);
            flags.Strokes = before;
        }
    }

    private string ReadFingers(SpanSyntax span)
    {
        var letters = span.Letters is { IsMissing: false } token ? token.Text : "";
        if (!letters.AsSpan().ContainsAnyExcept("pimac")) return letters;
        Problems.Add(TechniqueProblems.NoSuchPickingFinger(span.Letters!.Span));
        return "";
    }

    private void BindSwitch(SwitchSyntax change)
    {
        if (PlayFlags.KindOf(change.Word.Text) is not { } kind) return;
        if (!flags.Switch(kind, change.Word, change.IsOn)) Problems.Add(FormProblems.SwitchChangesNothing(change.Span, change.IsOn));
    }

    private void BindStrand(StrandSyntax strand)
    {
        if (scope == Scope.Strand)
        {
            Problems.Add(FormProblems.StrandWithinStrand(strand.Span));
            return;
        }
        var kind = strand.Word.Text switch
        {
            "bass" => StrandKind.Bass,
            "drone" => StrandKind.Drone,
            _ => StrandKind.Top,
        };
        if (!sides.TryGetValue(kind, out var side)) sides[kind] = side = new StrandCursor(kind, StrandState.Unset);
        var (outerScope, outerCursor) = (scope, cursor);
        (scope, cursor) = (Scope.Strand, side);
        var begins = bar.SideEnd(kind);
        side.StartBar(main.At);
        if (main.At < begins) Problems.Add(TimeProblems.StrandsOverlap(strand.Word.Span, strand.Word.Text));
        Walk(strand.Items);
        bar.AddSide(side);
        bar.Touch(strand.Span);
        (scope, cursor) = (outerScope, outerCursor);
    }

    private EntryState CurrentState() =>
        new(main.State, sides.Count == 0 ? EntryState.Unset.Sides : sides.ToImmutableDictionary(s => s.Key, s => s.Value.State));
}
