import type { Run } from '../time/runs.ts';

/** Plays runs of a source into an output with one channel for each of the source's. */
export interface Deck {
  /** Seconds ahead of its time that a run must be given. */
  readonly lead: number;
  /** Plays a run; runs come in order of time. The loop is given when it goes on to be repeated without a gap. */
  start(run: Run, loop: { readonly start: number; readonly end: number } | null): void;
  /** Ends everything at a moment of the sound's clock. */
  cut(at: number): void;
  /** To be called now and then, with the sound's clock. */
  tick(now: number): void;
  dispose(): void;
}
