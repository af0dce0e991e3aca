import type { Range } from '../time/form.ts';
import { SampleRate, type Source } from './source.ts';

/** A source with one more channel: a solo that begins at a moment of it. */
export class CalledSource implements Source {
  readonly channels: number;
  private solo: Float32Array<ArrayBuffer> | null = null;

  /** @param read The solo's samples. @param start Seconds of the source where it begins. */
  constructor(private readonly source: Source, private readonly start: number, private readonly read: Promise<Float32Array<ArrayBuffer>>) {
    this.channels = source.channels + 1;
    read.then(samples => { this.solo = samples; }, () => {});
  }

  get seconds(): number { return this.source.seconds; }

  get pieceSeconds(): number { return this.source.pieceSeconds; }

  get pieceCount(): number { return this.source.pieceCount; }

  piece(index: number): readonly Float32Array<ArrayBuffer>[] | null {
    const piece = this.source.piece(index);
    if (!piece || !this.solo) return null;
    const channel = new Float32Array(piece[0]?.length ?? 0);
    const from = Math.round((index * this.pieceSeconds - this.start) * SampleRate);
    const part = this.solo.subarray(Math.max(0, from), Math.max(0, from + channel.length));
    channel.set(part, Math.min(channel.length, Math.max(0, -from)));
    return [...piece, channel];
  }

  whenRead(tell: (index: number) => void): () => void {
    let stop = () => {};
    let isStopped = false;
    this.read.then(() => { if (!isStopped) stop = this.source.whenRead(tell); }, () => {});
    return () => {
      isStopped = true;
      stop();
    };
  }

  async ready(range: Range): Promise<void> {
    await this.read;
    await this.source.ready(range);
  }
}
