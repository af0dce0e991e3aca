using Fretlore.Binding.Lessons;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Riffs;
using Fretlore.Score;

namespace Fretlore.Binding;

/// <summary>What every stage of binding one sheet shares.</summary>
internal sealed class BindContext
{
    public DiagnosticBag Problems { get; } = new();

    public SongLimits Limits { get; } = new();

    public Dictionary<string, NamedShape> Shapes { get; } = [];

    public Dictionary<string, BoundRoadMap> RoadMaps { get; } = [];

    public required IRiffSource Riffs { get; set; }
}
