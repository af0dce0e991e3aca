namespace Fretlore.Lesson.Kit;

/// <summary>How far the making of a kit is.</summary>
/// <param name="Doing">What is being done, for example "Writing MIDI".</param>
/// <param name="Share">Of the whole work, from 0 to 1.</param>
public readonly record struct KitMoment(string Doing, double Share);
