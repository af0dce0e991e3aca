using System.Collections.Immutable;
using Fretlore.Binding;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Kit;
using Fretlore.Lesson.Overlays;
using Fretlore.Lesson.Plans;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Workspace.Hands;
using Fretlore.Workspace.Sheets;

namespace Fretlore.Workspace;

/// <summary>An immutable snapshot of one sheet through all stages. Stages past the song are made when they are first asked for.</summary>
public sealed class SongWorkspace
{
    private readonly BoundSong bound;
    private readonly Lazy<SongReading> reading;
    private readonly Lazy<SongHands> hands;

    private SongWorkspace(ParsedSheet sheet)
    {
        Sheet = sheet;
        bound = SongBinder.Bind(sheet);
        reading = new Lazy<SongReading>(() => SongReader.Read(Song ?? throw new InvalidOperationException("A sheet without a song has no reading.")));
        hands = new Lazy<SongHands>(() => HandPlanner.Plan(Song ?? throw new InvalidOperationException("A sheet without a song has no hand plan.")));
        // Only a stated symbol can disagree with the reading, so a sheet without one is checked without it.
        var conflicts = bound.Song is { } song && StatesSymbols(song) ? ReadingDiagnostics.Of(Reading, bound) : [];
        Findings = [.. bound.Diagnostics.Concat(conflicts).Concat(SoundDiagnostics.Of(sheet.Root)).OrderBy(d => d.Span.Start).Select(d => Finding.Of(d, sheet.Text))];
    }

    /// <summary>The text as a tree.</summary>
    public ParsedSheet Sheet { get; }

    /// <summary>The song; null when the sheet leaves nothing to make one of.</summary>
    public Song? Song => bound.Song;

    /// <summary>What the song's music is. There must be a song.</summary>
    public SongReading Reading => reading.Value;

    /// <summary>How an average fretting hand plays the song. There must be a song.</summary>
    public SongHands Hands => hands.Value;

    /// <summary>What was found in the sheet, in the order of its text; what no hand can do is not among it, see <see cref="Check"/>.</summary>
    public ImmutableArray<Finding> Findings { get; }

    public bool HasErrors => bound.HasErrors;

    /// <summary>Reads a sheet. Never fails, whatever the text.</summary>
    public static SongWorkspace Open(SourceText text) => new(Syntax.Sheet.Parse(text));

    /// <summary>Everything that was found in the sheet, in the order of its text: what is written, and what no average hand can do.</summary>
    public ImmutableArray<Finding> Check() => Song is null || HasErrors ? Findings : [.. Findings.Concat(PlanHands(new PlayingHand(HandSize.Average)).Findings).OrderBy(f => f.Line).ThenBy(f => f.Column)];

    /// <summary>Plans the fretting hand through the song. There must be a song.</summary>
    public HandsView PlanHands(PlayingHand hand)
    {
        var plan = hand == new PlayingHand(HandSize.Average) ? Hands : HandPlanner.Plan(Song ?? throw new InvalidOperationException("A sheet without a song has no hand plan."), hand);
        // A riff that is played is looked at where it is played, at the tempo there.
        var unplayed = plan.Riffs.Where(riff => !Song!.RiffUses.Any(use => use.Riff == riff.Name));
        var found = plan.Parts.Concat(unplayed).SelectMany(line => line.Problems)
            .Select(problem => HandsView.Finding(problem, bound.SpanOf(problem.Note)))
            .DistinctBy(diagnostic => (diagnostic.Code, diagnostic.Span))
            .OrderBy(diagnostic => diagnostic.Span.Start);
        return new HandsView(plan, [.. found.Select(diagnostic => Finding.Of(diagnostic, Sheet.Text))]);
    }

    private static bool StatesSymbols(Song song) => song.Parts.Any(
        part => part.Bars.Any(bar => bar.Strands.Any(strand => strand.Events.Any(item => item.ChordSymbol is not null))));

    /// <summary>Plans the film of the sheet's lesson. There must be a song.</summary>
    /// <param name="budget">Time for the film; null for the sheet's.</param>
    public FilmPlanResult PlanFilm(TimeSpan? budget = null)
    {
        var song = Song ?? throw new InvalidOperationException("A sheet without a song has no lesson.");
        return FilmPlanner.Plan(Performer.Play(song), Reading, Hands, budget);
    }

    /// <summary>Plans the pictures to lay over a film. There must be a song.</summary>
    /// <param name="plan">The film.</param>
    /// <param name="frame">Its frame.</param>
    /// <param name="framesASecond">One of <see cref="FilmFrame.Rates"/>.</param>
    /// <param name="step">One step by its number from 1; null for all.</param>
    public OverlayPlan PlanOverlays(FilmPlan plan, FilmFrame frame, int framesASecond, int? step)
    {
        var song = Song ?? throw new InvalidOperationException("A sheet without a song has no lesson.");
        return OverlayPlan.Of(song, Hands, plan, frame, framesASecond, step);
    }

    /// <summary>Makes the song's kit in memory. There must be a song.</summary>
    /// <param name="options">How it is made.</param>
    /// <param name="progress">Told as each piece of work begins, and while it goes on.</param>
    /// <param name="cache">What was made for the last kit of this sheet; null to make everything anew.</param>
    /// <param name="stop">Ends the making early.</param>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public KitResult MakeKit(KitOptions options, Action<KitMoment>? progress = null, KitCache? cache = null, CancellationToken stop = default)
    {
        var song = Song ?? throw new InvalidOperationException("A sheet without a song has no kit.");
        return KitBuilder.Build(new KitSource(song, () => Reading, () => Hands, options, stop) { Cache = cache }, progress);
    }
}
