import { type Line, xOn } from './places.ts';

/** Milliseconds between the line and the sound that are put right at once, and those that are when they last. */
const Jump = 12;
const Drift = 3;

/** The share that one frame has in what is taken for a lasting drift: the sound's clock is read a little unevenly. */
const Share = 0.1;

/**
 * The line that goes through the pages. The browser moves it by itself from a bar's first note to its end, so that a frame needs no
 * layout and no painting; it is set anew at each bar, at each change of speed, and when it is no longer with the sound.
 */
export class Cursor {
  private glide: Animation | null = null;
  private line: Line | null = null;
  private pace = 0;
  // The place of the song it was at, and when, in milliseconds of the page's clock.
  private from = 0;
  private began = 0;
  private drift = 0;

  constructor(readonly element: HTMLElement) {}

  /** After a change of the pages' size. */
  forget(): void { this.line = null; }

  dispose(): void { this.glide?.cancel(); }

  /**
   * Shows a place of the song.
   * @param seconds Where the sound was at a moment.
   * @param now That moment, in milliseconds of the page's clock.
   * @param pace Seconds of the song that go by in a second; 0 when it stands.
   * @param put Puts the element beside a line and returns the pixels to a unit of the page.
   */
  show(line: Line, seconds: number, now: number, pace: number, put: () => number): void {
    const isWith = this.isWith(line, seconds, now, pace);
    if (isWith && pace === 0) return;
    if (!isWith) this.start(line, seconds, now, pace, put());
    // To begin may have taken its time.
    this.element.dataset.at = this.placeAt(performance.now()).toFixed(4);
  }

  private placeAt(now: number): number { return this.from + (now - this.began) / 1000 * this.pace; }

  private isWith(line: Line, seconds: number, now: number, pace: number): boolean {
    if (line !== this.line || Math.abs(pace - this.pace) > 1e-4) return false;
    if (pace === 0) return seconds === this.from;
    const off = (this.placeAt(now) - seconds) / pace * 1000;
    this.drift += Share * (off - this.drift);
    return Math.abs(off) <= Jump && Math.abs(this.drift) <= Drift;
  }

  private start(line: Line, seconds: number, now: number, pace: number, scale: number): void {
    [this.line, this.pace, this.from, this.began, this.drift] = [line, pace, seconds, now, 0];
    const at = (x: number) => `translate3d(${(x * scale).toFixed(2)}px, ${(line.top * scale).toFixed(1)}px, 0)`;
    const { style } = this.element;
    style.height = `${((line.bottom - line.top) * scale).toFixed(1)}px`;
    style.transform = at(xOn(line, seconds));
    this.glide?.cancel();
    this.glide = null;
    const [start, end] = [line.times[0] as number, line.times.at(-1) as number];
    if (pace === 0 || end <= start) return;
    const frames = line.times.map((time, i) => ({ offset: (time - start) / (end - start), transform: at(line.xs[i] as number) }));
    this.glide = this.element.animate(frames, { duration: (end - start) / pace * 1000, fill: 'both' });
    // Said outright: else it would begin only when the browser has made itself ready.
    this.glide.startTime = now - (seconds - start) / pace * 1000;
  }
}
