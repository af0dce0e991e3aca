import type { Range } from '../time/form.ts';

/** Sound that can be played: some channels, read in pieces, with its own seconds. */
export interface Source {
  readonly channels: number;
  readonly seconds: number;
  readonly pieceSeconds: number;
  readonly pieceCount: number;
  /** A piece that has been read: samples of each channel; null while it is still being read. */
  piece(index: number): readonly Float32Array<ArrayBuffer>[] | null;
  /** Called for each piece, in order, as soon as it is there, at once for those that are. Returns a way to stop it. */
  whenRead(tell: (index: number) => void): () => void;
  /** Settles when everything a range needs has been read. */
  ready(range: Range): Promise<void>;
}

export const SampleRate = 48000;

/** A source whose pieces arrive one after another. */
export class PiecedSource implements Source {
  private readonly pieces: (readonly Float32Array<ArrayBuffer>[])[] = [];
  private readonly listeners = new Set<() => void>();
  private failure: Error | null = null;

  constructor(readonly channels: number, readonly seconds: number, readonly pieceSeconds: number, readonly pieceCount: number) {}

  add(piece: readonly Float32Array<ArrayBuffer>[]): void {
    this.pieces.push(piece);
    for (const tell of [...this.listeners]) tell();
  }

  /** No more pieces come. */
  fail(error: Error): void {
    this.failure = error;
    for (const tell of [...this.listeners]) tell();
  }

  get readCount(): number { return this.pieces.length; }

  piece(index: number): readonly Float32Array<ArrayBuffer>[] | null { return this.pieces[index] ?? null; }

  whenRead(tell: (index: number) => void): () => void {
    let told = 0;
    const go = () => { while (told < this.pieces.length) tell(told++); };
    this.listeners.add(go);
    go();
    return () => this.listeners.delete(go);
  }

  ready(range: Range): Promise<void> {
    const needed = Math.min(this.pieceCount, Math.floor(Math.max(0, range.end) / this.pieceSeconds) + 1);
    return new Promise((resolve, reject) => {
      const look = () => {
        if (this.pieces.length >= needed) resolve();
        else if (this.failure) reject(this.failure);
        else return;
        this.listeners.delete(look);
      };
      this.listeners.add(look);
      look();
    });
  }
}
