import { lastAtOrBefore } from '../time/form.ts';
import type { Moment, Note } from '../song/song.ts';

/** How far back a note may have begun and still sound: notes are looked through so many at most. */
const Reach = 48;

/** Seconds before a note that it is announced. */
const Ahead = 4;

/** What a part plays at a moment: the notes that sound and those that come next. */
export interface Hand { readonly now: readonly Note[]; readonly next: readonly Note[] }

export class Hands {
  private readonly onsets: readonly number[];

  /** @param notes In order of time. */
  constructor(private readonly notes: readonly Note[]) { this.onsets = notes.map(note => note.on); }

  at(seconds: number): Hand {
    const last = lastAtOrBefore(this.onsets, seconds + 1e-4);
    const { notes } = this;
    const now = notes.slice(Math.max(0, last - Reach), last + 1).filter(note => note.off > seconds);
    const first = notes[last + 1];
    if (!first || first.on > seconds + Ahead) return { now, next: [] };
    const next: Note[] = [];
    for (let i = last + 1; i < notes.length && (notes[i] as Note).on < first.on + 0.04; i++) next.push(notes[i] as Note);
    return { now, next };
  }

  /** The lowest and the highest stopped fret in a stretch of time; null where nothing is stopped. */
  reach(start: number, end: number): { low: number; high: number } | null {
    const frets = this.notes.slice(lastAtOrBefore(this.onsets, start - 1e-4) + 1, lastAtOrBefore(this.onsets, end) + 1)
      .map(note => note.fret).filter(fret => fret > 0);
    return frets.length === 0 ? null : { low: Math.min(...frets), high: Math.max(...frets) };
  }
}

/** The index in force at a time; -1 for none. */
export function indexAt(moments: readonly Moment[], seconds: number): number {
  return moments.findLast(moment => moment.at <= seconds + 1e-4)?.index ?? -1;
}
