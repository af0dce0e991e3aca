import type { PlayedBar, Song, Stretch } from '../song/song.ts';

/** A stretch of time within the song, in seconds. */
export interface Range { readonly start: number; readonly end: number }

/** The song's form: which bar is when, and what it is called. */
export class Form {
  readonly song: Song;
  private readonly starts: readonly number[];

  constructor(song: Song) {
    this.song = song;
    this.starts = song.played.map(bar => bar.start);
  }

  get barCount(): number { return this.starts.length; }

  /** Index of the played bar at a time; the first or last one outside the song. */
  barAt(seconds: number): number {
    return Math.max(0, lastAtOrBefore(this.starts, seconds + 1e-6));
  }

  bar(index: number): PlayedBar {
    const bar = this.song.played[index];
    if (!bar) throw new RangeError(`There is no bar ${index}.`);
    return bar;
  }

  startOf(index: number): number {
    return index >= this.starts.length ? this.song.seconds : this.bar(Math.max(0, index)).start;
  }

  endOf(index: number): number { return this.startOf(index + 1); }

  /** Beat within its bar at a time, from 1; 0 before the first beat of a pickup. */
  beatAt(seconds: number): number {
    return lastAtOrBefore(this.bar(this.barAt(seconds)).beats, seconds + 1e-6) + 1;
  }

  /** The printed number of a played bar. */
  numberOf(index: number): number { return this.song.bars[this.bar(index).bar]?.number ?? 0; }

  sectionAt(index: number): Stretch | undefined {
    return this.song.stretches.find(s => s.kind === 'section' && index >= s.first && index < s.first + s.count);
  }

  rangeOf(stretch: Stretch): Range { return { start: this.startOf(stretch.first), end: this.startOf(stretch.first + stretch.count) }; }

  /** Bars from one to another, both included. */
  rangeOfBars(first: number, last: number): Range {
    const [low, high] = first <= last ? [first, last] : [last, first];
    return { start: this.startOf(low), end: this.endOf(high) };
  }

  /** A range in printed bar numbers: "bar 4", "bars 1 to 8". */
  wordsOf(range: Range): string {
    const first = this.numberOf(this.barAt(range.start));
    const last = this.numberOf(this.barAt(range.end - 1e-3));
    return first === last ? `bar ${first}` : `bars ${first} to ${last}`;
  }

  /** Where it is, as said aloud: "Bar 12, beat 3, Verse 1". */
  whereabouts(seconds: number, withBeat = true): string {
    const index = this.barAt(seconds);
    const bar = this.bar(index);
    const repeated = bar.pass > 1 ? `, time ${bar.pass}` : '';
    const beat = withBeat ? `, beat ${Math.max(1, this.beatAt(seconds))}` : '';
    const section = this.sectionAt(index);
    return `${this.song.bars[bar.bar]?.pickup ? 'Pickup bar' : `Bar ${this.numberOf(index)}`}${beat}${repeated}${section ? `, ${section.name}` : ''}`;
  }

  /** Where a riff, section or road map comes first; a part's own is preferred. */
  find(name: string, part?: number): Stretch | undefined {
    const all = this.song.stretches.filter(s => s.name === name);
    return all.find(s => s.part === part && part !== undefined) ?? all[0];
  }
}

/** Index of the last number that is not after a value; -1 when all are. The numbers rise. */
export function lastAtOrBefore(numbers: readonly number[], value: number): number {
  let [low, high] = [0, numbers.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((numbers[middle] as number) <= value) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
