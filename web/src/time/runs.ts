/**
 * A run is a stretch that is played through at one speed: it begins at a moment of the sound's clock and at a place in the music.
 * A loop is a row of runs, and so is a song whose speed is changed on the way.
 */
export interface Run {
  /** Seconds of the sound's clock. */
  readonly at: number;
  /** Seconds of the music where it begins, and where it ends. */
  readonly from: number;
  readonly to: number;
  /** Seconds of music a second; above 0. */
  readonly rate: number;
  /** Which time through a loop it is, from 0. */
  readonly pass: number;
  /** True when it follows the run before without a gap, from the loop's end to its start, at the same speed. */
  readonly isSeamless: boolean;
}

export const endOf = (run: Run): number => run.at + (run.to - run.from) / run.rate;

/** The place in the music at a moment of the sound's clock; before the first run its start, after the last its end. */
export function placeAt(runs: readonly Run[], clock: number): number {
  let current = runs[0];
  for (const run of runs) if (run.at <= clock) current = run;
  if (!current) return 0;
  return Math.min(current.to, current.from + Math.max(0, clock - current.at) * current.rate);
}

/** The moment of the sound's clock at which a place of a run is heard; null when the run does not have it. */
export function clockOf(run: Run, place: number): number | null {
  return place < run.from - 1e-9 || place >= run.to - 1e-9 ? null : run.at + (place - run.from) / run.rate;
}

/** A speed that rises from pass to pass. Speeds are percents of the song's tempo. */
export interface Ramp { readonly from: number; readonly to: number; readonly by: number; readonly passes: number }

/** The speed of a pass, from 0: it rises by a step every so many passes until its goal. */
export function speedOfPass(ramp: Ramp, pass: number): number {
  const steps = Math.floor(pass / Math.max(1, ramp.passes));
  const speed = ramp.from + steps * Math.abs(ramp.by) * Math.sign(ramp.to - ramp.from || 1);
  return ramp.from <= ramp.to ? Math.min(speed, ramp.to) : Math.max(speed, ramp.to);
}
