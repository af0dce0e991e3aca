using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Which notes of a part are joined to the next one on their string: ties, hammer-ons, pull-offs and glides.</summary>
/// <remarks>Notes are followed through the written bars of a strand; each later ending goes on from where the first one did.</remarks>
internal sealed class Joins
{
    private readonly HashSet<(NoteId, Attack)> departures = [];
    private readonly HashSet<NoteId> arrivals = [];

    public static Joins Of(Song song, Part part)
    {
        var joins = new Joins();
        var last = new Dictionary<(StrandKind, StringNumber), NoteId>();
        Dictionary<(StrandKind, StringNumber), NoteId>? beforeEndings = null;
        for (var bar = 0; bar < part.Bars.Count; bar++)
        {
            if (song.Bars[bar].StartsEnding)
            {
                if (beforeEndings is null) beforeEndings = new(last);
                else last = new(beforeEndings);
            }
            else if (song.Bars[bar].EndingPasses.Count == 0)
            {
                beforeEndings = null;
            }
            foreach (var strand in part.Bars[bar].Strands)
            {
                foreach (var note in strand.Events.SelectMany(e => e.Graces.Concat(e.Notes))) joins.Add(note, (strand.Kind, note.String), last);
            }
        }
        return joins;
    }

    /// <summary>True when the note that <paramref name="note"/> comes from is known.</summary>
    public bool Arrives(Note note) => arrivals.Contains(note.Id);

    /// <summary>True when a note with this attack follows on the string and comes from <paramref name="note"/>.</summary>
    public bool Departs(Note note, Attack attack) => departures.Contains((note.Id, attack));

    /// <summary>True when the next note is reached without picking.</summary>
    public bool DepartsLegato(Note note) => Departs(note, Attack.HammerOn) || Departs(note, Attack.PullOff) || Departs(note, Attack.Glide);

    public bool ArrivesLegato(Note note) => note.Attack is Attack.HammerOn or Attack.PullOff or Attack.Glide && Arrives(note);

    private void Add(Note note, (StrandKind, StringNumber) place, Dictionary<(StrandKind, StringNumber), NoteId> last)
    {
        if (note.Attack is not (Attack.Picked or Attack.Tap or Attack.HammerFromNowhere) && last.TryGetValue(place, out var from))
        {
            departures.Add((from, note.Attack));
            arrivals.Add(note.Id);
        }
        last[place] = note.Id;
    }
}
