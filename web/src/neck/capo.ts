import type { Part } from '../song/song.ts';

type Neck = Pick<Part, 'strings' | 'capo' | 'capoStrings' | 'frets'>;

/** The MIDI number of a fret as it is written; null where a partial capo lies above it. */
export function sounding(part: Neck, string: number, fret: number): number | null {
  const open = part.strings[part.strings.length - string]?.midi ?? 0;
  if (!part.capoStrings) return open + part.capo + fret;
  const [lowest, highest] = part.capoStrings;
  const at = string <= lowest && string >= highest ? part.capo : 0;
  if (fret === 0) return open + at;
  return fret > at ? open + fret : null;
}

/** The highest fret as it is written. */
export const highestFret = (part: Neck): number => part.frets - (part.capoStrings ? 0 : part.capo);

/** The part with the capo that lies on its neck at a time; the same part where it never moves. */
export function atTime(part: Part, seconds: number): Part {
  const move = part.capos?.findLast(capo => capo.at <= seconds + 1e-4);
  if (!move) return part;
  const { capoStrings: _, ...rest } = part;
  return { ...rest, capo: move.fret, ...(move.strings ? { capoStrings: move.strings } : {}) };
}

/** Such as `fret 2` or `fret 2 on strings 5–3`; empty without a capo. */
export function capoWords(part: Pick<Part, 'capo' | 'capoStrings'>): string {
  if (part.capo === 0) return '';
  if (!part.capoStrings) return `fret ${part.capo}`;
  const [lowest, highest] = part.capoStrings;
  return `fret ${part.capo} on ${lowest === highest ? `string ${lowest}` : `strings ${lowest}–${highest}`}`;
}
