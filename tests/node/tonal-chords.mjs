// Prints every chord type as symbol|semitones above the root, and every scale type after it as scale|name|semitones.
import { ChordType, Interval, ScaleType } from "tonal";

for (const type of ChordType.all()) {
  console.log(`chord|${type.aliases.find((a) => a !== "") ?? "M"}|${type.intervals.map((i) => Interval.semitones(i)).join(" ")}`);
}
for (const type of ScaleType.all()) {
  console.log(`scale|${type.name}|${type.intervals.map((i) => Interval.semitones(i)).join(" ")}`);
}
