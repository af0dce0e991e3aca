// Prints what the npm package midi-file reads in a Standard MIDI File: one list of events a track, with absolute ticks.
import { readFileSync } from "node:fs";
import midi from "midi-file";

const file = midi.parseMidi(readFileSync(process.argv[2]));
const tracks = file.tracks.map((track) => {
  let tick = 0;
  return track.map(({ deltaTime, ...event }) => ({ tick: (tick += deltaTime), ...event }));
});
console.log(JSON.stringify({ header: file.header, tracks }));
