using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>What a riff is in a breath or two: what it is like, where the hand is, what it does, between which frets, for how long.</summary>
internal sealed class Headline(Riff riff, CallOutContext context)
{
    private readonly StringWords strings = new(riff.Neck.Tuning, context.Style.Strings);
    private readonly RiffFeatures features = RiffFeatures.Of(riff);

    public Speech Tell()
    {
        var breaths = new Breaths();
        if (features.Playing == Playing.Nothing)
        {
            breaths.Say("Nothing to play: rest for " + HowLong());
            return new Speech(breaths.Sentences);
        }
        if (context.BaseOf(riff) is { } basis) breaths.Say(new RiffTeller(riff, context, Detail.WalkThrough).Relation(basis));
        breaths.Say(What() + Reach());
        if (context.Hands is { } hands && HandPositions.Of(riff, hands) is { } positions) breaths.Say(positions.Words);
        if (features.Devices.Count > 0) breaths.Say("Listen for " + SpokenList.Joined(features.Devices.Select(HeadlineWords.Of), "and"));
        if (context.Hands is { } plan && HandWords.HardPlace(riff, plan) is { } hard) breaths.Say(hard);
        breaths.Say(HowLong() + Rhythm());
        return new Speech(breaths.Sentences);
    }

    private string What()
    {
        var words = HeadlineWords.Of(features.Playing);
        return features.Playing switch
        {
            Playing.OneFinger => $"{words} {strings.TheSeveral(features.Strings)}",
            Playing.Shapes => $"{words} {SpokenList.Joined(ShapeNames(), "and")}",
            Playing.SeveralStrings => words,
            _ => words + On(),
        };
    }

    private IEnumerable<string> ShapeNames() =>
        riff.Content.SelectMany(b => b.Strands).SelectMany(s => s.Events).Where(e => e.Notes.Count > 1).Select(e => e.Shape).OfType<string>().Distinct().Select(SpokenName.OfShape);

    private string On()
    {
        var used = features.Strings;
        if (features.IsSpan) return $" from the {strings.One(used[0])} to the {strings.One(used[1])}";
        return used.Count == 1 ? " on the " + strings.One(used[0]) : " on " + strings.TheSeveral(used);
    }

    private string Reach()
    {
        var (low, high, open) = features.Reach;
        if (low == 0) return open == 0 ? "" : open == 1 && features.Strings.Count != 1 ? ", one string open" : ", all open";
        var reach = low == high ? $"fret {NumberWords.Of(low)}" : $"frets {NumberWords.Of(low)} to {NumberWords.Of(high)}";
        return $", {reach}{open switch { 0 => "", 1 => " and the open string", _ => " and the open strings" }}";
    }

    private string HowLong()
    {
        var bars = features.Bars == 1 ? "one bar" : NumberWords.Of(features.Bars) + " bars";
        var text = !features.HasPickup ? bars : features.Bars == 0 ? "a pickup" : "a pickup and " + bars;
        if (features.Meter is not { } meter) text += " in changing metres";
        else if (meter != (4, 4)) text += $" of {NumberWords.Of(meter.Count)} {NumberWords.Of(meter.Unit)}";
        return features.BarsPlayed == features.Bars ? text : $"{text}, {NumberWords.Of(features.BarsPlayed)} with the repeats";
    }

    private string Rhythm() => features.MainValue is { } main ? $", {(main.IsAll ? "all" : "mostly")} {ValueWords.Many(main.Value, main.Tuplet)}" : "";
}
