using Fretlore.Lesson.CallOuts.Telling;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>What a teacher reminds of, from the techniques that a riff uses. All are common practice.</summary>
internal static class Reminders
{
    private static readonly (Func<Event, Note, bool> Uses, string Words)[] Table =
    [
        ((e, n) => n.IsPalmMuted,
            "Palm mutes: the edge of the picking hand lies on the strings right at the bridge. Closer to the neck chokes the note."),
        ((e, n) => e.Notes.Count > 1 && EventTeller.IsUniform(e) && !n.Fret.IsOpen
            && !n.IsDead, "One finger across: lay it flat, a little on its bony side, and check that every string sounds."),
        ((e, n) => n.Bend is not null,
            "Bends: put other fingers behind the one that bends and turn the wrist. Play the target note first, then bend until it matches."),
        ((e, n) => n.Vibrato.Width != VibratoWidth.None, "Vibrato: come back to the note each time, evenly, in time with the song."),
        ((e, n) => n.Attack is Attack.HammerOn or Attack.PullOff or Attack.HammerFromNowhere,
            "Hammer and pull: as loud as the picked notes. Pull a little sideways, not just away."),
        ((e, n) => n.Attack == Attack.Tap, "Taps: strike right behind the fret, and damp the strings below with the palm."),
        ((e, n) => n.Attack is Attack.Glide or Attack.PickedGlide,
            "Slides: keep the pressure on all the way, and look at the fret you are going to."),
        ((e, n) => n.Harmonic is { Kind: HarmonicKind.Natural or HarmonicKind.Touched },
            "Harmonics: touch right over the fret wire, do not press, and lift the finger once it rings."),
        ((e, n) => n.Harmonic is { Kind: HarmonicKind.Pinch },
            "Pinched harmonics: let the thumb brush the string just after the pick, and move along it until the harmonic speaks."),
        ((e, n) => n.LetsRing, "Let it ring: fingers stand on their tips, so that none damps the string beside it."),
        ((e, n) => n.IsDead, "Dead notes: rest the fretting hand on the strings with two fingers, so that no harmonic sneaks out."),
    ];

    public static IEnumerable<string> For(Riff riff)
    {
        var notes = riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).SelectMany(e =>
            e.Notes.Select(n => (e, n))).ToArray();
        foreach (var (uses, words) in Table)
        {
            if (notes.Any(p => uses(p.e, p.n))) yield return words;
        }
        if (riff.Content.SelectMany(b => b.Strands).SelectMany(s => RhythmRun.Of(s.Events)).Any(r => r.Cell == Cell.Gallop))
        {
            yield return "Gallops: down, down, up. Keep the picking hand loose and let the long one be long.";
        }
    }
}
