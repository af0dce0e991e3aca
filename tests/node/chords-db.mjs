// Prints every guitar position of the chord dataset as key|suffix|MIDI numbers.
import { createRequire } from "node:module";

const guitar = createRequire(import.meta.url)("@tombatossals/chords-db/lib/guitar.json");
for (const chords of Object.values(guitar.chords)) {
  for (const chord of chords) {
    for (const position of chord.positions) {
      console.log(`${chord.key}|${chord.suffix}|${position.midi.join(" ")}`);
    }
  }
}
