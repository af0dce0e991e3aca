import type { Pages, Song } from './song.ts';

const KnownFormat = 1;

/** Reads the song that Fretlore wrote into this file. */
export function readSong(): Song {
  const song = JSON.parse(textOf('song')) as Song;
  if (song.format !== KnownFormat) throw new Error(`The song is in format ${song.format}, and this page reads format ${KnownFormat}. Make the kit again.`);
  return song;
}

/** Unpacks one set of pages. */
export async function readPages(id: string): Promise<Pages> {
  const stream = new Blob([bytesOf(id)]).stream().pipeThrough(new DecompressionStream('gzip'));
  return JSON.parse(await new Response(stream).text()) as Pages;
}

/** One piece of a part's sound: an Opus file. */
export const soundPiece = (part: number, piece: number): Uint8Array<ArrayBuffer> => bytesOf(`sound-${part}-${piece}`);

/** A solo's sound: an Opus file. */
export const callSound = (id: string): Uint8Array<ArrayBuffer> => bytesOf(id);

function textOf(id: string): string {
  const text = document.getElementById(id)?.textContent;
  if (!text) throw new Error(`The part "${id}" of this file is missing: it may have been cut short when it was copied.`);
  return text;
}

function bytesOf(id: string): Uint8Array<ArrayBuffer> {
  const text = textOf(id);
  // Newer browsers do it in one go.
  const newer = Uint8Array as unknown as { fromBase64?: (text: string) => Uint8Array<ArrayBuffer> };
  if (newer.fromBase64) return newer.fromBase64(text);
  const characters = atob(text);
  const bytes = new Uint8Array(characters.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = characters.charCodeAt(i);
  return bytes;
}
