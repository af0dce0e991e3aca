namespace Fretlore.RoadMaps.Search;

/// <summary>A way to play one note: where, and bent how far.</summary>
/// <param name="String">From 1, the highest.</param>
/// <param name="Fret">As written under the capo.</param>
/// <param name="Bend">Semitones it is bent up at once; 0 for none.</param>
/// <param name="Height">What is heard on arrival, a MIDI number.</param>
/// <param name="Final">What is heard last.</param>
internal readonly record struct PlaceNode(int String, int Fret, int Bend, int Height, int Final);
