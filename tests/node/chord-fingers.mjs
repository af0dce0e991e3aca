// Prints the frets and the fingers that the dataset gives for each of its guitar positions, low string first: name, frets from the nut, fingers.
import { createRequire } from "node:module";

const guitar = createRequire(import.meta.url)("@tombatossals/chords-db/lib/guitar.json");
const lines = [];
for (const chords of Object.values(guitar.chords)) {
  for (const { key, suffix, positions } of chords) {
    for (const { frets, fingers, baseFret } of positions) {
      const fromNut = frets.map((fret) => (fret < 0 ? "x" : fret === 0 ? 0 : fret + baseFret - 1));
      lines.push([`${key} ${suffix}`, fromNut.join(" "), fingers.join(" ")].join("\t"));
    }
  }
}
process.stdout.write(lines.join("\n"));
