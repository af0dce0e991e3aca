namespace Fretlore.Cli.Json;

/// <summary>What <c>roadmap --json</c> prints of a road map and the takes made from it; bars are those of the stretch, from 1.</summary>
internal sealed record RoadMapTakesJson(
    string RoadMap, string Part, string Section, int FirstBar, int Bars, int? Seed, IReadOnlyList<int> Fixed, IReadOnlyList<string> Rules, IReadOnlyList<string> Conflict, IReadOnlyList<TakeLine> Takes);

/// <summary>One take.</summary>
internal sealed record TakeLine(
    string File, int Number, double Level, int Notes, string Hands, IReadOnlyList<TakePhraseLine> Phrases, IReadOnlyList<LickLine> Licks, IReadOnlyList<TargetLine> Targets);

/// <summary>A phrase of a take; times in quarter notes from the stretch's start.</summary>
internal sealed record TakePhraseLine(string Kind, int Bar, int Bars, double Start, double End, string? Riff);

/// <summary>A lick that was drawn on, and how many of its notes were played as they stand in it.</summary>
internal sealed record LickLine(string Riff, int Bar, int Bars, int Kept, int Notes);

/// <summary>A target that was hit; the place in quarter notes from the bar's start.</summary>
internal sealed record TargetLine(string Rule, int Bar, double At, int String, int Fret);

/// <summary>What <c>roadmap --check --json</c> prints.</summary>
internal sealed record SoloCheckJson(string RoadMap, bool KeepsAll, IReadOnlyList<RuleLine> Rules, IReadOnlyList<LickLine> Licks, IReadOnlyList<TargetLine> Targets);

/// <summary>One rule, where it is broken, and what could not be judged.</summary>
internal sealed record RuleLine(string Rule, bool Kept, IReadOnlyList<BreakLine> Breaks, string? Remark);

/// <summary>Where a rule is broken: the place in quarter notes from the bar's start, null for the bar as a whole.</summary>
internal sealed record BreakLine(int Bar, double? At, string What);

/// <summary>What <c>roadmap --propose --json</c> prints: the rules and the riffs made for them, the block as a sheet has it, and how many of the takes keep each rule.</summary>
internal sealed record ProposalJson(
    string RoadMap, string Part, string Section, int FirstBar, int Bars, int Takes, IReadOnlyList<int> Fixed, IReadOnlyList<ProposedRuleLine> Rules, IReadOnlyList<string> Riffs, string Block);

/// <summary>A proposed rule, and how many takes keep it.</summary>
internal sealed record ProposedRuleLine(string Rule, int KeptBy);
