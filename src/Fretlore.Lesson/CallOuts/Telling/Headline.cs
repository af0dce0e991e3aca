using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>What a riff is in a breath or two: where the hand is, what it does, between which frets, for how long.</summary>
internal sealed class Headline(Riff riff, CallOutContext context)
{
    private readonly StringWords strings = new(riff.Neck.Tuning, context.Style.Strings);
    private readonly Event[] events = [.. riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => !e.IsRest)];

    public Speech Tell()
    {
        var breaths = new Breaths();
        if (events.Length == 0)
        {
            breaths.Say("Nothing to play: count the rest");
            return new Speech(breaths.Sentences);
        }
        if (context.BaseOf(riff) is { } basis) breaths.Say($"A variation on {RiffTeller.RiffName(SpokenName.Of(basis.Name))}");
        breaths.Say(What());
        if (context.Hands is { } hands && HandWords.Positions(riff, hands) is { } positions) breaths.Say(positions);
        if (Devices() is { Length: > 0 } devices) breaths.Say("Listen for " + devices);
        if (context.Hands is { } plan && HandWords.HardPlace(riff, plan) is { } hard) breaths.Say(hard);
        breaths.Say(HowLong());
        return new Speech(breaths.Sentences);
    }

    private string What()
    {
        var notes = events.SelectMany(e => e.Notes).ToArray();
        var used = notes.Select(n => n.String).Distinct().OrderByDescending(s => s.Value).ToValueList();
        var together = events.Where(e => e.Notes.Count > 1).ToArray();
        if (together.Length * 2 > events.Length) return Chords(together) + Reach(notes);
        var kind = IsPicked() ? "a ringing line"
            : notes.Count(n => n.Attack is Attack.HammerOn or Attack.PullOff or Attack.Tap) * 3 > notes.Length ? "a legato line"
            : "a single-note line";
        return kind + On(used) + Reach(notes);
    }

    private string Chords(Event[] together)
    {
        var bars = together.Count(EventTeller.IsUniform);
        var widest = together.Where(EventTeller.IsUniform).Select(e => e.Notes.Select(n => n.String).ToValueList()).GroupBy(p => p)
            .OrderByDescending(g => g.Count()).Select(g => g.Key).FirstOrDefault();
        if (bars * 2 > together.Length && StringWords.IsBlock(widest)) return "one finger across " + strings.TheSeveral(widest);
        var pairs = together.Where(e => e.Notes.Count == 2).ToArray();
        if (pairs.Length * 2 > together.Length)
        {
            return "pairs" + On(pairs.SelectMany(e => e.Notes).Select(n => n.String).Distinct().OrderByDescending(s => s.Value).ToValueList());
        }
        var names = together.Select(e => e.Shape).OfType<string>().Distinct().Select(n => SpokenName.OfShape(n)).ToArray();
        return names.Length is > 0 and < 6 ? "shapes: " + Listed(names) : "shapes of several strings";
    }

    private bool IsPicked() => events.Length > 3 && events.Count(e => e.Notes.Any(n => n.LetsRing)) * 2 > events.Length
        && events.SelectMany(e => e.Notes).Select(n => n.String).Distinct().Count() > 2;

    private string On(ValueList<Guitar.StringNumber> used)
    {
        if (used.Count == 1) return " on the " + strings.One(used[0]);
        if (used.Count == 2) return " on " + strings.TheSeveral(used);
        return $" from the {strings.One(used[0])} to the {strings.One(used[^1])}";
    }

    private static string Reach(Note[] notes)
    {
        var frets = notes.Where(n => !n.IsDead && !n.Fret.IsOpen).Select(n => n.Fret.Number).Distinct().Order().ToArray();
        var open = notes.Any(n => n.Fret.IsOpen && !n.IsDead);
        var opens = notes.Where(n => n.Fret.IsOpen && !n.IsDead).Select(n => n.String).Distinct().Count() > 1 ? "the open strings"
            : "the open string";
        if (frets.Length == 0) return open ? ", all open" : "";
        var reach = frets.Length == 1 ? $"fret {NumberWords.Of(frets[0])}"
            : $"frets {NumberWords.Of(frets[0])} to {NumberWords.Of(frets[^1])}";
        return ", " + reach + (open ? " and " + opens : "");
    }

    private string Devices()
    {
        var notes = events.SelectMany(e => e.Notes).ToArray();
        var found = new List<string>();
        var gallops = riff.Content.SelectMany(b => b.Strands).SelectMany(s => RhythmRun.Of(s.Events))
            .Where(r => r.Cell != Cell.None).Sum(r => r.Count / 3);
        if (gallops > 0) found.Add(gallops == 1 ? "the gallop" : "the gallops");
        if (notes.Any(n => n.IsPalmMuted)) found.Add("the palm mutes");
        if (notes.Any(n => n.Bend is not null)) found.Add(notes.Count(n => n.Bend is not null) == 1 ? "the bend" : "the bends");
        if (notes.Any(n => n.Attack == Attack.Tap)) found.Add("the taps");
        if (notes.Any(n => n.Harmonic is not null)) found.Add("the harmonics");
        if (notes.Any(n => n.Attack is Attack.Glide or Attack.PickedGlide || n.GlideIn != GlideIn.None
            || n.GlideOut != GlideOut.None)) found.Add("the slides");
        if (events.Any(e => e.Tuplet is not null)) found.Add("the tuplets");
        return Listed(found.Take(3).ToArray());
    }

    private string HowLong()
    {
        var bars = riff.Bars.Count(b => !b.IsPickup);
        var played = PlayOrder.Of(riff.Bars).Count(p => !riff.Bars[p.Bar].IsPickup);
        var text = bars == 1 ? "one bar" : NumberWords.Of(bars) + " bars";
        var meter = riff.Bars[0].Meter;
        if (meter != Meter.FourFour) text += $" of {NumberWords.Of(meter.Count)} {NumberWords.Of(meter.Unit)}";
        return played == bars ? text : $"{text}, {NumberWords.Of(played)} with the repeats";
    }

    private static string Listed(string[] words) => words.Length switch
    {
        0 => "",
        1 => words[0],
        _ => string.Join(", ", words[..^1]) + " and " + words[^1],
    };
}
