namespace Fretlore.Hands.Grips;

/// <summary>The fretting hand a plan is made for.</summary>
/// <param name="Size">How far its fingers reach.</param>
/// <param name="UsesThumb">True where the thumb may come over the neck to the two lowest strings.</param>
public readonly record struct PlayingHand(HandSize Size, bool UsesThumb = false);
