using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>What is said about notes that are fretted and played alike: a core such as "hammer to six", and marks after it.</summary>
internal static class NoteWords
{
    private static readonly string[] Fingers = ["thumb", "index finger", "middle finger", "ring finger", "little finger"];

    /// <summary>The words for a fret: "open", "seven".</summary>
    public static string Fret(int fret) => fret == 0 ? "open" : NumberWords.Of(fret);

    /// <summary>A finger in one word: "index".</summary>
    public static string Name(Finger finger) => Fingers[(int)finger].Split(' ')[0];

    /// <summary>How the note is reached: "hammer to ", "slide up to "; empty when simply picked.</summary>
    /// <param name="before">The fret sounded before on the string, if any.</param>
    public static string Approach(Note note, int? before)
    {
        var glide = note.GlideIn switch
        {
            GlideIn.FromBelow => "slide in from below to ",
            GlideIn.FromAbove => "slide in from above to ",
            _ => "",
        };
        return glide + note.Attack switch
        {
            Attack.HammerOn => "hammer to ",
            Attack.PullOff => "pull off to ",
            Attack.HammerFromNowhere => "hammer from nowhere on ",
            Attack.Tap => "tap ",
            Attack.Glide or Attack.PickedGlide when before > note.Fret.Number => "slide down to ",
            Attack.Glide or Attack.PickedGlide => "slide up to ",
            _ => "",
        };
    }

    /// <summary>The sounding thing itself, several times if said so in the words: "two chugs", "a dead note at five".</summary>
    /// <param name="palmSaid">True when a palm mute is already in force.</param>
    /// <param name="countIsSaid">True when the count is in the words.</param>
    public static string Core(Note note, int count, bool palmSaid, out bool countIsSaid)
    {
        countIsSaid = false;
        if (note.Harmonic is { } harmonic) return Harmonic(note, harmonic);
        if (note.IsDead)
        {
            countIsSaid = note.Fret.IsOpen;
            if (!note.Fret.IsOpen) return "a dead note at " + NumberWords.Of(note.Fret.Number);
            return count == 1 ? "a dead note" : NumberWords.Of(count) + " dead notes";
        }
        if (!IsChug(note, palmSaid)) return Fret(note.Fret.Number);
        countIsSaid = note.Fret.IsOpen;
        if (!note.Fret.IsOpen) return "chug on " + NumberWords.Of(note.Fret.Number);
        return count == 1 ? "a chug" : NumberWords.Of(count) + " chugs";
    }

    /// <summary>True when nothing stops the string, so that a ring said for all is meant for this note too.</summary>
    public static bool RingsFree(Note note) => !note.IsPalmMuted && !note.IsDead;

    /// <summary>True for a plain palm-muted note, which has a word of its own.</summary>
    public static bool IsChug(Note note, bool palmSaid) =>
        note is { IsPalmMuted: true, IsDead: false, Harmonic: null, Attack: Attack.Picked, GlideIn: GlideIn.None } && !palmSaid;

    /// <summary>What else is done to it, in the order done.</summary>
    public static IEnumerable<string> Marks(Note note, bool palmSaid, bool chugSaid, bool ringSaid, Detail detail)
    {
        var held = note.Attack == Attack.Held;
        if (note.Attack == Attack.PickedGlide) yield return "and pick it again";
        if (note.IsPalmMuted && !held && !palmSaid && !chugSaid) yield return "palm-muted";
        if (note.IsGhost) yield return "ghosted";
        if (note.IsAccented) yield return "with an accent";
        if (note.IsStaccato) yield return "cut short";
        if (note.Tremolo is { } tremolo) yield return "tremolo-picked in " + ValueWords.Plain(tremolo);
        if (note.Trill is { } trill) yield return "trilled with " + Fret(trill.Number);
        if (note.DipCents > 0) yield return $"dipped {BendWords.Size(note.DipCents)} with the arm";
        foreach (var words in BendWords.Of(note.Bend, note.Vibrato, held)) yield return words;
        if (detail == Detail.NoteByNote && note.Finger is { } finger) yield return "with the " + Fingers[(int)finger];
        if (note.LetsRing && !held && !(ringSaid && RingsFree(note))) yield return "let it ring";
        if (note.GlideOut == GlideOut.Downwards) yield return "and slide off down the neck";
        if (note.GlideOut == GlideOut.Upwards) yield return "and slide off up the neck";
    }

    /// <summary>What is done to the whole event.</summary>
    public static IEnumerable<string> EventMarks(Event item, Detail detail)
    {
        if (item.Roll == Roll.LowToHigh) yield return "rolled up";
        if (item.Roll == Roll.HighToLow) yield return "rolled down";
        if (item.Roll == Roll.Rake) yield return "raked";
        if (item.HasFermata) yield return "under a fermata";
        if (detail == Detail.NoteByNote || item.IsRest)
        {
            if (item.Stroke == Stroke.Down) yield return "downstroke";
            if (item.Stroke == Stroke.Up) yield return "upstroke";
        }
        if (detail != Detail.NoteByNote) yield break;
        if (item.PickingFinger is { } finger) yield return "by the " + PickingFinger(finger);
        if (item.Spans.HasFlag(Spans.TremoloPicking)) yield return "tremolo-picked all through";
        if (item.Spans.HasFlag(Spans.TremoloArm)) yield return "with the arm";
        if (item.Spans.HasFlag(Spans.Wah)) yield return "with the wah";
        if (item.Spans.HasFlag(Spans.Crescendo)) yield return "getting louder";
        if (item.Spans.HasFlag(Spans.Diminuendo)) yield return "getting softer";
    }

    /// <summary>A finger of the picking hand (p, i, m, a, c) in words.</summary>
    public static string PickingFinger(char letter) =>
        letter switch { 'p' => "thumb", 'i' => "index", 'm' => "middle", 'a' => "ring", _ => "little" };

    /// <summary>The picking finger a word names, or null.</summary>
    public static char? PickingFingerOf(string word) =>
        word switch { "thumb" => 'p', "index" => 'i', "middle" => 'm', "ring" => 'a', "little" => 'c', _ => null };

    /// <summary>The fretting finger a word names, or null.</summary>
    public static Finger? FrettingFingerOf(string word)
    {
        var index = Array.FindIndex(Fingers, f => f.Split(' ')[0] == word);
        return index < 0 ? null : (Finger)index;
    }

    private static string Harmonic(Note note, Harmonic harmonic) => harmonic.Kind switch
    {
        HarmonicKind.Natural => "harmonic at " + NumberWords.Of(harmonic.TouchedAt.Number),
        HarmonicKind.Touched => $"harmonic at {NumberWords.Of(harmonic.TouchedAt.Number)} over {Fret(note.Fret.Number)}",
        _ => "pinch harmonic on " + Fret(note.Fret.Number),
    };
}
