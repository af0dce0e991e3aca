import { lastAtOrBefore } from './form.ts';

/** A place of the song and where the player's own recording has it, both in seconds. */
export interface SyncPoint { readonly song: number; readonly take: number }

/** Carries places of the song over to a recording and back, in straight lines from point to point. */
export class Sync {
  readonly points: readonly SyncPoint[];

  /** With no point the recording is taken to run with the song; with one, to be late by a fixed time. Points that don't rise in both are left out. */
  constructor(points: readonly SyncPoint[]) {
    const rising: SyncPoint[] = [];
    for (const point of [...points].sort((a, b) => a.song - b.song)) {
      const last = rising.at(-1);
      if (!last || (point.song > last.song + 1e-3 && point.take > last.take + 1e-3)) rising.push(point);
    }
    this.points = rising;
  }

  toTake(song: number): number { return this.carry(song, p => p.song, p => p.take); }

  toSong(take: number): number { return this.carry(take, p => p.take, p => p.song); }

  /** Beyond the outermost points the recording goes on at the speed it has between the last two. */
  private carry(value: number, from: (p: SyncPoint) => number, to: (p: SyncPoint) => number): number {
    const [first, second] = this.points;
    if (!first) return value;
    if (!second) return value - from(first) + to(first);
    const at = Math.min(Math.max(0, lastAtOrBefore(this.points.map(from), value)), this.points.length - 2);
    const [a, b] = [this.points[at] as SyncPoint, this.points[at + 1] as SyncPoint];
    return to(a) + (value - from(a)) * (to(b) - to(a)) / (from(b) - from(a));
  }
}

/** Sync points from taps on the first beat of one bar after another. */
export function fromTaps(taps: readonly number[], barStarts: readonly number[], firstBar: number): SyncPoint[] {
  return taps.flatMap((take, i) => {
    const song = barStarts[firstBar + i];
    return song === undefined ? [] : [{ song, take }];
  });
}
