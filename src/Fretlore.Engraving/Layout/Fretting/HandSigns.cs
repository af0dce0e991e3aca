using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Fretting;

/// <summary>A position the hand goes to.</summary>
/// <param name="At">Quarter notes from the bar's start.</param>
/// <param name="Position">The fret the index finger stands at.</param>
internal readonly record struct PositionMark(Beats At, int Position);

/// <summary>Which fingers and positions stand on the pages.</summary>
/// <remarks>
/// Fingers are needed at the start of a stay in a position and wherever a finger is not on the fret that is its own there; a bar that comes again with
/// the same fingers is not marked again, and shapes have their fingers in their frames.
/// </remarks>
internal sealed class HandSigns
{
    // The first position is where everybody begins; a numeral says when the hand comes back to it from higher up.
    private const int LowPosition = 2;

    private readonly HandSignOptions options;
    private readonly SongHands? hands;
    private readonly bool framesShow;
    private readonly HashSet<int> shown = [];
    private readonly Dictionary<(int Part, int Bar), List<PositionMark>> positions = [];

    /// <param name="song">The song.</param>
    /// <param name="parts">Indexes of the parts that are shown.</param>
    /// <param name="hands">The hand plan, or null where none was made: then only what is written is shown.</param>
    /// <param name="options">The page's.</param>
    public HandSigns(Song song, IEnumerable<int> parts, SongHands? hands, PageOptions options)
    {
        (this.hands, this.options, framesShow) = (hands, options.Hands, options.ChordFrames);
        if (hands is null || this.options is { Fingers: not FingersShown.Needed, Positions: false }) return;
        foreach (var part in parts) Read(part, song.Parts[part], hands);
    }

    /// <summary>Whether strokes and fingers of the picking hand are shown.</summary>
    public bool Strokes => options.Strokes;

    public bool HasPositions => positions.Count > 0;

    /// <summary>The finger that stands at a note; null for none.</summary>
    public Finger? FingerOf(Note note) => options.Fingers switch
    {
        FingersShown.None => null,
        _ when note.Finger is { } written => written,
        FingersShown.All => note.IsTiedFromBefore ? null : hands?.Of(note.Id).Finger,
        FingersShown.Needed when shown.Contains(note.Id.Index) => hands!.Of(note.Id).Finger,
        _ => null,
    };

    public IReadOnlyList<PositionMark> PositionsIn(int part, int bar) => positions.GetValueOrDefault((part, bar)) ?? [];

    private void Read(int index, Part part, SongHands plan)
    {
        var isAgain = Again(part, plan);
        var last = 0;
        foreach (var stay in HandStay.Of(part.Bars, plan))
        {
            if (stay.IsWorthNaming)
            {
                if (!isAgain[stay.Moments[0].Bar] && stay.Position != last) MarkStart(index, stay, last);
                last = stay.Position;
            }
            else if (stay.Position > LowPosition) last = 0;
            foreach (var moment in stay.Moments)
            {
                if (!isAgain[moment.Bar]) MarkStrayFingers(moment, plan);
            }
        }
    }

    private void MarkStart(int part, HandStay stay, int last)
    {
        var start = stay.Moments[0];
        if (!IsFramed(start.Item)) Show(start);
        if (!options.Positions || stay.Position <= LowPosition && last <= LowPosition) return;
        if (!positions.TryGetValue((part, start.Bar), out var marks)) positions[(part, start.Bar)] = marks = [];
        marks.Add(new PositionMark(start.Item.Start, stay.Position));
    }

    // Fingers that are not on their own frets are not to be guessed; one finger alone is.
    private void MarkStrayFingers(HandMoment moment, SongHands plan)
    {
        if (IsFramed(moment.Item) || moment.Notes.All(note => plan.Of(note.Id).IsAtHome(note))) return;
        if (moment.Notes.Select(note => plan.Of(note.Id).Finger).Distinct().Count() > 1) Show(moment);
    }

    private void Show(HandMoment moment)
    {
        if (options.Fingers == FingersShown.Needed) shown.UnionWith(moment.Notes.Select(note => note.Id.Index));
    }

    private bool IsFramed(Event item) => framesShow && item.Shape is not null;

    // Bars that stood before with the same notes under the same fingers.
    private static bool[] Again(Part part, SongHands plan)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var again = new bool[part.Bars.Count];
        var text = new System.Text.StringBuilder();
        for (var bar = 0; bar < part.Bars.Count; bar++)
        {
            text.Clear();
            foreach (var item in part.Bars[bar].Strands.SelectMany(strand => strand.Events))
            {
                text.Append(item.Start).Append(':');
                foreach (var note in item.Notes) text.Append(note.String).Append('/').Append(note.Fret).Append('/').Append((int?)plan.Of(note.Id).Finger).Append(' ');
            }
            again[bar] = !seen.Add(text.ToString());
        }
        return again;
    }
}
