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

/** Such as `fret 2` or `fret 2 on strings 5–3`; empty without a capo. */
export function capoWords(part: Pick<Part, 'capo' | 'capoStrings'>): string {
  if (part.capo === 0) return '';
  if (!part.capoStrings) return `fret ${part.capo}`;
  const [lowest, highest] = part.capoStrings;
  return `fret ${part.capo} on ${lowest === highest ? `string ${lowest}` : `strings ${lowest}–${highest}`}`;
}
