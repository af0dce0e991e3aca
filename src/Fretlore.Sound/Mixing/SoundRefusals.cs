using System.Globalization;
using Fretlore.Score;
using Fretlore.Sound.Rigs;

namespace Fretlore.Sound.Mixing;

/// <summary>Why something can't be played as asked.</summary>
internal static class SoundRefusals
{
    public static SoundResult Rig(Part part, string name) => new SoundResult.Refused(
        $"the part {part.Name} asks for the sound \"{name}\", and there is none of that name.",
        (RigNames.NearestTo(name) is { } near ? $"Perhaps {near} was meant. " : "") + $"Sounds are {string.Join(", ", RigNames.All)}.");

    public static SoundResult Speed(decimal speed) => new SoundResult.Refused(
        string.Create(CultureInfo.InvariantCulture, $"{speed * 100:0.##}% is no speed to play at."),
        string.Create(CultureInfo.InvariantCulture, $"Give {SoundRequest.SlowestSpeed * 100:0}% to {SoundRequest.FastestSpeed * 100:0}% of the written tempo."));

    public static SoundResult NoPart() => new SoundResult.Refused("no part is left to be heard.", "Name a part that plays, or leave fewer out.");

    public static SoundResult Bars(Song song, SoundRequest request)
    {
        var asked = (request.FromBar, request.ToBar) switch
        {
            ({ } from, { } to) => string.Create(CultureInfo.InvariantCulture, $"bars {from} to {to}"),
            ({ } from, null) => string.Create(CultureInfo.InvariantCulture, $"a bar {from}"),
            (null, { } to) => string.Create(CultureInfo.InvariantCulture, $"a bar {to}"),
            _ => "a bar",
        };
        return song.Bars.Count == 0
            ? new SoundResult.Refused("the song has no bars.", "Write a section that plays something.")
            : new SoundResult.Refused(
                $"the song does not have {asked} in this order.",
                string.Create(CultureInfo.InvariantCulture, $"Its bars are {song.Bars[0].Number} to {song.Bars[^1].Number}, the first one first."));
    }

    public static SoundResult Section(Song song, string name) => new SoundResult.Refused(
        $"the song has no section \"{name}\".", Near(name, song.Sections.Select(s => s.Name).Distinct().ToList(), "sections"));

    public static SoundResult Riff(Song song, string name) => new SoundResult.Refused(
        $"the song has no riff \"{name}\".", Near(name, song.Riffs.Where(r => r.Bars.Count > 0).Select(r => r.Name).ToList(), "riffs"));

    public static SoundResult RiffNotInSong(string name) => new SoundResult.Refused(
        $"the riff {name} stands nowhere in the song, so no other part plays with it.", "Leave --part and --without away to hear it alone.");

    public static SoundResult SectionAndRiff() => new SoundResult.Refused(
        "a section and a riff are asked for at once.", "Give one of them; --from and --to choose bars of it.");

    public static SoundResult BarsWithin(string name, int count, int from, int to) => new SoundResult.Refused(
        string.Create(CultureInfo.InvariantCulture, $"{name} has no bars {from} to {to}."),
        string.Create(CultureInfo.InvariantCulture, $"Its bars are counted from its own first one: 1 to {count}."));

    public static SoundResult NeverPlayed(string name) => new SoundResult.Refused($"{name} is never played.", "Choose another place.");

    public static SoundResult CountedLoop() => new SoundResult.Refused(
        "a loop can't be counted in: it would be counted in each time round.", "Leave --count-in away, or --loop; --click goes with a loop.");

    public static SoundResult TooShort() => new SoundResult.Refused("it is too short to be a loop.", "Choose more bars, or a lower speed.");

    private static string Near(string name, List<string> names, string what) =>
        (Likeness.Nearest(name, names) is { } near ? $"Perhaps {near} was meant. " : "")
        + (names.Count == 0 ? $"It has no {what}." : $"Its {what} are {string.Join(", ", names)}.");

    public static SoundResult TooLong(double seconds) => new SoundResult.Refused(
        string.Create(CultureInfo.InvariantCulture, $"it would last {seconds / 3600:0.0} hours, and a sound may last 3."),
        "Choose fewer bars with --from and --to, or a higher speed.");
}
