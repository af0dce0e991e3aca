// Prints the notes that the engraving library verovio plays from MusicXML files: for each file, key, track and onset in quarter notes.
import { readFileSync } from "node:fs";
import midi from "midi-file";
import createVerovioModule from "verovio/wasm";
import { VerovioToolkit } from "verovio/esm";

const toolkit = new VerovioToolkit(await createVerovioModule());
const played = process.argv.slice(2).map((name) => {
  toolkit.setOptions({ inputFrom: "xml", expand: "" });
  if (!toolkit.loadData(readFileSync(name, "utf8"))) throw new Error(`verovio does not load ${name}`);
  const file = midi.parseMidi(Buffer.from(toolkit.renderToMIDI(), "base64"));
  const notes = file.tracks.flatMap((track, index) => {
    let tick = 0;
    return track
      .map(({ deltaTime, ...event }) => ({ tick: (tick += deltaTime), ...event }))
      .filter((event) => event.type === "noteOn" && event.velocity > 0)
      .map((event) => ({ track: index, key: event.noteNumber, onset: event.tick / file.header.ticksPerBeat }));
  });
  return { pages: toolkit.getPageCount(), log: toolkit.getLog(), notes };
});
console.log(JSON.stringify(played));
