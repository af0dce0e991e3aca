namespace Fretlore.Music;

/// <summary>Where the beats of a metre fall, and which of them are strong.</summary>
/// <remarks>
/// Strong are the first beat, and the third of four; every beat of a metre in groups of two and three, for each is the start of a group (common practice).
/// </remarks>
public static class StrongBeats
{
    /// <summary>The start of each beat, in quarter notes from the bar's start.</summary>
    public static ValueList<Beats> Starts(Meter meter)
    {
        var starts = new List<Beats>();
        var at = Beats.Zero;
        foreach (var group in meter.Groups)
        {
            starts.Add(at);
            at += Beats.Of(4, meter.Unit) * group;
        }
        return starts.ToValueList();
    }

    /// <summary>The start of each strong beat, in quarter notes from the bar's start.</summary>
    public static ValueList<Beats> Of(Meter meter)
    {
        var starts = Starts(meter);
        if (meter.Groups.Items.Any(units => units > 1)) return starts;
        return meter.Count % 2 == 0 && meter.Count >= 4 ? starts.Items.Where((_, beat) => beat % 2 == 0).ToValueList() : [starts[0]];
    }
}
