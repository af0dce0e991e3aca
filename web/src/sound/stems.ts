import { callSound, soundPiece } from '../song/blocks.ts';
import type { Song } from '../song/song.ts';
import { PiecedSource, SampleRate, type Source } from './source.ts';

/** Reads the parts' sound from the file, first things first, without holding up the page. A channel is a part. */
export function readStems(song: Song, failed: (error: Error) => void): Source {
  const { seconds, pieceSeconds, pieces } = song.sound;
  const source = new PiecedSource(song.parts.length, seconds, pieceSeconds, pieces);
  // It only decodes: nothing is rendered with it.
  const decoder = new OfflineAudioContext(1, 1, SampleRate);
  const decode = async (part: number, piece: number) => (await decoder.decodeAudioData(soundPiece(part, piece).buffer)).getChannelData(0);

  const readAll = async () => {
    for (let piece = 0; piece < pieces; piece++) {
      const length = Math.round(Math.min(pieceSeconds, seconds - piece * pieceSeconds) * SampleRate);
      source.add((await Promise.all(song.parts.map((_, part) => decode(part, piece)))).map(samples => fitted(samples, length)));
    }
  };
  readAll().catch((reason: unknown) => {
    const error = new Error(`The sound in this file can't be read by this browser: ${reason instanceof Error ? reason.message : String(reason)}`);
    source.fail(error);
    failed(error);
  });
  return source;
}

/** Reads the sound of a call from the file. */
export async function readCall(id: string): Promise<Float32Array<ArrayBuffer>> {
  try {
    return (await new OfflineAudioContext(1, 1, SampleRate).decodeAudioData(callSound(id).buffer)).getChannelData(0);
  } catch (reason) {
    throw new Error(`The phrases in this file can't be read by this browser: ${reason instanceof Error ? reason.message : String(reason)}`);
  }
}

// Decoders may differ by some samples at a file's end.
function fitted(samples: Float32Array<ArrayBuffer>, length: number): Float32Array<ArrayBuffer> {
  if (samples.length === length) return samples;
  const exact = new Float32Array(length);
  exact.set(samples.subarray(0, length));
  return exact;
}
