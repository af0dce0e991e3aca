using System.Collections.Immutable;
using Fretlore.Binding;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Kit;
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

    private SongWorkspace(ParsedSheet sheet)
    {
        Sheet = sheet;
        bound = SongBinder.Bind(sheet);
        reading = new Lazy<SongReading>(() => SongReader.Read(Song ?? throw new InvalidOperationException("A sheet without a song has no reading.")));
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

    /// <summary>What was found in the sheet, in the order of its text.</summary>
    public ImmutableArray<Finding> Findings { get; }

    public bool HasErrors => bound.HasErrors;

    /// <summary>Reads a sheet. Never fails, whatever the text.</summary>
    public static SongWorkspace Open(SourceText text) => new(Syntax.Sheet.Parse(text));

    /// <summary>Plans the fretting hand through the song. There must be a song.</summary>
    public HandsView PlanHands(HandSize size)
    {
        var plan = HandPlanner.Plan(Song ?? throw new InvalidOperationException("A sheet without a song has no hand plan."), size);
        var found = plan.Parts.SelectMany(part => part.Problems)
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
        return FilmPlanner.Plan(Performer.Play(song), Reading, HandPlanner.Plan(song), budget);
    }

    /// <summary>Makes the song's kit in memory. There must be a song.</summary>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public KitResult MakeKit(KitOptions options, Action<KitMoment>? progress = null, CancellationToken stop = default)
    {
        var song = Song ?? throw new InvalidOperationException("A sheet without a song has no kit.");
        return KitBuilder.Build(new KitSource(song, () => Reading, () => HandPlanner.Plan(song), options, stop), progress);
    }
}
