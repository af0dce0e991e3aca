namespace Fretlore.Binding.Draft;

/// <summary>Makes a flow from another with the same structure.</summary>
internal static class FlowMap
{
    /// <summary>Changes each bar once, so that bars that were the same stay the same.</summary>
    public static Flow Bars(Flow flow, Func<DraftBar, DraftBar> change)
    {
        var changed = new Dictionary<DraftBar, DraftBar>(ReferenceEqualityComparer.Instance);
        var made = new Flow { WrittenCount = flow.WrittenCount };
        foreach (var bar in flow.Bars)
        {
            if (!changed.TryGetValue(bar.Bar, out var now)) changed[bar.Bar] = now = change(bar.Bar);
            made.Add(now, bar.Origin, bar.Written);
        }
        made.Repeats.AddRange(flow.Repeats);
        made.Riffs.AddRange(flow.Riffs);
        made.RoadMaps.AddRange(flow.RoadMaps);
        return made;
    }
}
