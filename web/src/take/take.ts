import { PiecedSource, SampleRate, type Source } from '../sound/source.ts';

const MegabytesAtMost = 300;
const MinutesAtMost = 30;
const PieceSeconds = 10;

/** Reads an audio file of the player's own. It stays in this page and goes nowhere. */
export async function readTake(file: File): Promise<Source> {
  if (file.size > MegabytesAtMost * 1e6) {
    throw new Error(`${file.name} has ${Math.round(file.size / 1e6)} MB, and the page takes ${MegabytesAtMost} at most. Save it as MP3, M4A or Opus, or cut out the song.`);
  }
  if (file.size === 0) throw new Error(`${file.name} is empty. Choose the file that has the recording.`);
  let sound: AudioBuffer;
  try {
    sound = await new OfflineAudioContext(2, 1, SampleRate).decodeAudioData(await file.arrayBuffer());
  } catch {
    throw new Error(`${file.name} can't be read as sound by this browser. Try WAV, MP3 or M4A.`);
  }
  if (sound.duration > MinutesAtMost * 60) throw new Error(`${file.name} is ${Math.round(sound.duration / 60)} minutes long, and the page takes ${MinutesAtMost} at most. Cut out the song.`);
  const count = Math.ceil(sound.duration / PieceSeconds);
  const source = new PiecedSource(2, sound.duration, PieceSeconds, count);
  const [left, right] = [sound.getChannelData(0), sound.getChannelData(Math.min(1, sound.numberOfChannels - 1))];
  for (let i = 0; i < count; i++) {
    const [from, to] = [i * PieceSeconds * SampleRate, (i + 1) * PieceSeconds * SampleRate];
    source.add([left.slice(from, to), right.slice(from, to)]);
  }
  return source;
}

/** The recording of the sheet that a file is, by its name: a copy may have another ending, as when it was made smaller. */
export function recordingOf<T extends { readonly name: string }>(recordings: readonly T[], fileName: string): T | undefined {
  const stem = (name: string) => name.normalize('NFC').toLowerCase().replace(/\.[a-z0-9]{1,5}$/, '');
  return recordings.find(recording => stem(recording.name) === stem(fileName));
}

/** What a file is remembered by. */
export const keyOf = (file: File) => `${file.name} ${file.size}`;
