import type { OpenString } from '../song/song.ts';

/** The frequency of a string by equal temperament (ISO 16 for 440 Hz), moved by semitones. */
export const hertzOf = (midi: number, a4: number, semitones = 0) => a4 * 2 ** ((midi + semitones - 69) / 12);

/** Which string a tone is nearest to, and how far off it is in cents; positive is sharp. */
export function nearestString(hertz: number, strings: readonly OpenString[], a4: number, semitones = 0): { index: number; cents: number } | null {
  let nearest: { index: number; cents: number } | null = null;
  strings.forEach((string, index) => {
    const cents = 1200 * Math.log2(hertz / hertzOf(string.midi, a4, semitones));
    if (!nearest || Math.abs(cents) < Math.abs(nearest.cents)) nearest = { index, cents };
  });
  return nearest;
}

/** In words: "in tune", "12 cents flat: tune up". */
export function centsInWords(cents: number): string {
  const whole = Math.round(Math.abs(cents));
  if (whole <= 3) return 'in tune';
  return cents < 0 ? `${whole} cents flat: tune up` : `${whole} cents sharp: tune down`;
}
