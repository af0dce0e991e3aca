/** Frets shown of a neck: from the wire before the first to the last one's. */
export interface Window { readonly first: number; readonly last: number }

/** The frets to show when so many have room: those that are played, with as little change from before as can be. */
export function windowFor(reach: { low: number; high: number } | null, before: Window | null, room: number, frets: number): Window {
  const width = Math.min(Math.max(room, reach ? reach.high - reach.low + 1 : 1), frets);
  if (width >= frets) return { first: 1, last: frets };
  if (!reach) return before && before.last - before.first + 1 === width ? before : { first: 1, last: width };
  const fits = before && before.last - before.first + 1 === width && reach.low >= before.first && reach.high <= before.last;
  if (fits) return before;
  const middle = (reach.low + reach.high) / 2;
  const first = Math.min(Math.max(1, Math.round(middle - (width - 1) / 2)), frets - width + 1);
  return { first: reach.low <= width - 1 && reach.high <= width ? 1 : first, last: (reach.low <= width - 1 && reach.high <= width ? 1 : first) + width - 1 };
}

/** Frets that carry a dot on the neck (common practice); two at the octave. */
export const dotsAt = (fret: number): 0 | 1 | 2 => fret > 0 && fret % 12 === 0 ? 2 : [3, 5, 7, 9].includes(fret % 12) ? 1 : 0;
