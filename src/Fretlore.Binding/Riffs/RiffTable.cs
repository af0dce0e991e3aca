using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>All riffs of a sheet, bound in an order in which each comes after those it plays.</summary>
internal sealed class RiffTable(BindContext context, Dictionary<string, RiffSyntax> declared, RiffOrder order) : IRiffSource
{
    private readonly Dictionary<string, BoundRiff> bound = [];
    private readonly Dictionary<(string Riff, Neck Neck, bool Sounded), Flow?> placed = [];

    /// <summary>In the order they are written.</summary>
    public IEnumerable<BoundRiff> InOrderWritten => declared.Keys.Where(bound.ContainsKey).Select(name => bound[name]);

    public bool Has(string name) => declared.ContainsKey(name);

    public IEnumerable<string> Names => declared.Keys;

    public BoundRiff? Find(string name) => bound.GetValueOrDefault(name);

    public bool IsRefused(SyntaxNode use) => order.Refused.Contains(use);

    public void Add(BoundRiff riff) => bound[riff.Name] = riff;

    public Flow? Play(PlaySyntax play, Neck neck)
    {
        if (IsRefused(play)) return null;
        var name = play.Name.Text;
        if (!bound.TryGetValue(name, out var riff))
        {
            if (!declared.ContainsKey(name)) context.Problems.Add(NameProblems.UnknownRiff(play.Name, declared.Keys));
            return null;
        }
        var sounded = play.Mode is { IsMissing: false, Text: "sounded" };
        // Under another capo frets stay, as a player's hand does, unless the sheet asks for the pitches.
        if (SameTuning(riff.Neck.Tuning, neck.Tuning)) sounded &= riff.Neck.Capo != neck.Capo;
        else if (play.Mode is null or { IsMissing: true })
        {
            context.Problems.Add(FormProblems.RiffOfOtherTuning(play.Span, name, riff.Neck.Tuning.ToString(), neck.Tuning.ToString()));
        }
        if (!placed.TryGetValue((name, neck, sounded), out var flow))
        {
            flow = sounded ? SoundedPlacer.Place(riff, neck, play, context.Problems) : FrettedPlacer.Place(riff, neck, play.Span, context.Problems);
            placed[(name, neck, sounded)] = flow;
        }
        return flow;
    }

    public Flow? Fixed(string name, Neck neck, TextSpan at)
    {
        if (!bound.TryGetValue(name, out var riff)) return null;
        if (!SameTuning(riff.Neck.Tuning, neck.Tuning))
        {
            context.Problems.Add(RoadMapProblems.FixedOfOtherTuning(at, name, riff.Neck.Tuning.ToString(), neck.Tuning.ToString()));
            return null;
        }
        return FrettedPlacer.Place(riff, neck, at, context.Problems);
    }

    private static bool SameTuning(Tuning a, Tuning b) =>
        ReferenceEquals(a, b) || (a.StringCount == b.StringCount && a.LowToHigh.Zip(b.LowToHigh).All(p => p.First.Midi == p.Second.Midi));
}
