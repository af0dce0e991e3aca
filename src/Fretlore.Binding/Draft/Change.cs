using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Draft;

/// <summary>A change of metre, tempo, key or feel that holds until the next one.</summary>
internal abstract record Change;

internal sealed record MeterChange(Meter Meter) : Change;

internal sealed record TempoChange(Tempo Tempo) : Change;

internal sealed record KeyChange(Key Key) : Change;

internal sealed record FeelChange(Feel Feel) : Change;

internal sealed record CapoChange(Capo Capo) : Change;

internal sealed record DynamicMark(Dynamic Dynamic) : Change;

internal sealed record ChordSymbolMark(string Symbol) : Change;

/// <summary>The next event is held for longer than written.</summary>
internal sealed record FermataMark : Change;

/// <summary>The bar that "dal segno" goes back to.</summary>
internal sealed record SegnoMark : Change;

/// <summary>The bar the coda begins with.</summary>
internal sealed record CodaMark : Change;

/// <summary>Where it is gone to from a bar's end.</summary>
internal sealed record JumpMark(Jump Jump) : Change;

/// <summary>A change at its place in a bar.</summary>
internal sealed record PlacedChange(Beats At, Change Change, TextSpan Span);
