using System.CommandLine;
using Fretlore.Engraving.Layout.Fretting;

namespace Fretlore.Cli.Verbs;

/// <summary>The options that say what of the hands stands on pages.</summary>
internal sealed class HandSignFlags
{
    private readonly Option<string> fingers = new("--fingers")
    {
        Description = "Fretting fingers under the tablature: none, the written ones, also those that are needed to find the way, or all.",
        DefaultValueFactory = _ => "needed",
    };

    private readonly Option<bool> noPositions = new("--no-positions") { Description = "Leave out the Roman numerals where the hand goes to a position." };

    private readonly Option<string> strokes = new("--strokes")
    {
        Description = "Strokes and fingers of the picking hand: none, the written ones, or all, planned where the sheet leaves them open.",
        DefaultValueFactory = _ => "written",
    };

    public HandSignFlags()
    {
        fingers.AcceptOnlyFromAmong("none", "written", "needed", "all");
        strokes.AcceptOnlyFromAmong("none", "written", "all");
    }

    /// <summary>Puts them on a verb.</summary>
    public void AddTo(Command verb)
    {
        verb.Add(fingers);
        verb.Add(noPositions);
        verb.Add(strokes);
    }

    public HandSignOptions Read(ParseResult parsed) => new(
        parsed.GetRequiredValue(fingers) switch
        {
            "none" => FingersShown.None,
            "written" => FingersShown.Written,
            "all" => FingersShown.All,
            _ => FingersShown.Needed,
        },
        !parsed.GetValue(noPositions), parsed.GetRequiredValue(strokes) != "none", parsed.GetRequiredValue(strokes) == "all");
}
