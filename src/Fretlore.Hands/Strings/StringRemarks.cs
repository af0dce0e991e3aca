using System.Collections.Immutable;
using System.Globalization;

namespace Fretlore.Hands.Strings;

/// <summary>What a set of strings should be warned about.</summary>
public enum StringConcern
{
    /// <summary>A plain string is above the least tension at which it may break.</summary>
    Breaks,

    /// <summary>A plain string is within a fifth of that.</summary>
    NearBreaking,

    /// <summary>A string is much looser or tighter than wanted because no gauge of the table fits.</summary>
    NoFittingGauge,

    /// <summary>A string is so loose that it hardly plays.</summary>
    Slack,

    /// <summary>A string pulls more than usual bridges and tuners are made for.</summary>
    Tight,

    /// <summary>The whole pull on the neck moves by more than a tenth.</summary>
    LoadMoves,
}

/// <summary>One warning about a set of strings, in whole sentences.</summary>
public sealed record StringRemark(StringConcern Concern, string Text);

/// <summary>Warns about strings that break, hang loose, or change what the neck was set up for.</summary>
public static class StringRemarks
{
    /// <summary>A plain string is near breaking from this share of its least breaking load on.</summary>
    public const double NearBreakingShare = 0.8;

    /// <summary>The neck's load moves noticeably from this share on.</summary>
    public const double LoadShare = 0.1;

    // By judgement, from the span of published sets: below, a string flaps; above, it is beyond the usual chart.
    private static readonly Tension Loosest = new(9), Tightest = new(35);

    // Off the wanted tension by more than this, a gauge does not fit.
    private const double FarOff = 0.2;

    private const string Care =
        "Wear eye protection while changing and tuning strings, and keep your face away from them.";

    /// <param name="set">The strings in the new tuning.</param>
    /// <param name="feel">What was wanted; null when the gauges were given.</param>
    /// <param name="before">What is on the guitar now, or a usual set; null when neither is known.</param>
    public static ImmutableArray<StringRemark> On(StringSet set, StringFeel? feel, StringSet? before)
    {
        var remarks = ImmutableArray.CreateBuilder<StringRemark>();
        foreach (var tuned in set.Strings)
        {
            if (Breaking(tuned) is { } breaking) remarks.Add(breaking);
            if (Fit(tuned, feel) is { } fit) remarks.Add(fit);
        }
        if (before is not null && Load(set, before) is { } load) remarks.Add(load);
        return remarks.ToImmutable();
    }

    private static StringRemark? Breaking(TunedString tuned)
    {
        if (tuned.ShareOfBreaking is not { } share || share < NearBreakingShare) return null;
        var load = MusicWire.BreakingLoad(tuned.Gauge)!.Value;
        var facts = string.Create(
            CultureInfo.InvariantCulture,
            $"String {tuned.Number} ({tuned.Gauge}) pulls {tuned.Tension.PoundsForce:0.0} lbf at {tuned.Pitch}; steel wire of that gauge breaks at {load.Least.PoundsForce:0.0} to {load.Greatest.PoundsForce:0.0} lbf.");
        return share >= 1
            ? new StringRemark(StringConcern.Breaks, $"{facts} It is likely to break before it is in tune, whatever its gauge: tune it lower or use a shorter scale. {Care}")
            : new StringRemark(StringConcern.NearBreaking, $"{facts} That leaves little for bends and worn strings: tune it lower if you can. {Care}");
    }

    private static StringRemark? Fit(TunedString tuned, StringFeel? feel)
    {
        var pull = string.Create(CultureInfo.InvariantCulture, $"String {tuned.Number} ({tuned.Gauge}) pulls {tuned.Tension.PoundsForce:0.0} lbf at {tuned.Pitch}");
        if (feel is not null)
        {
            var target = feel.Target(tuned.Number);
            var ratio = tuned.Tension.PoundsForce / target.PoundsForce;
            if (ratio is > 1 + FarOff or < 1 - FarOff)
            {
                var end = ratio > 1 ? "thinnest" : "thickest";
                return new StringRemark(StringConcern.NoFittingGauge, string.Create(
                    CultureInfo.InvariantCulture,
                    $"{pull} where {target.PoundsForce:0.0} lbf was wanted: no string of the table comes nearer, and this is the {end} that does. Ask a string maker for one made for that pitch, or change scale length or tuning."));
            }
        }
        if (tuned.Tension < Loosest) return new StringRemark(StringConcern.Slack, $"{pull}: so loose a string flaps against the frets and goes sharp when it is struck hard. Take a thicker one.");
        if (tuned.Tension > Tightest) return new StringRemark(StringConcern.Tight, $"{pull}: more than usual sets ask of a bridge and a tuner. Take a thinner one, or ask a technician first. {Care}");
        return null;
    }

    private static StringRemark? Load(StringSet set, StringSet before)
    {
        var change = set.Load.PoundsForce / before.Load.PoundsForce - 1;
        if (Math.Abs(change) <= LoadShare) return null;
        var (more, relief) = change > 0 ? ("more", "bow forward and the action rise") : ("less", "straighten and the strings buzz");
        return new StringRemark(StringConcern.LoadMoves, string.Create(
            CultureInfo.InvariantCulture,
            $"The strings pull {set.Load.PoundsForce:0} lbf on the neck, {Math.Abs(change) * 100:0}% {more} than {before.Load.PoundsForce:0} lbf before. The neck will {relief}; relief, nut slots, action, intonation and a floating bridge need a new setup. Change the tuning in steps and leave the truss rod to a guitar technician if you have not set one before. {Care}"));
    }
}
