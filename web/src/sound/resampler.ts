/** Samples of what came before that a sample out may need. */
const Reach = 4;

/** Reads a sound at another pace, so that it comes out higher or lower: piece by piece, each joined to the one before. */
export class Resampler {
  private before = new Float32Array(Reach);
  /** Where the next sample out is read, in samples from the end of what came before. */
  private next = 0;

  /** @param ratio Samples in for each sample out: 2 is an octave up. */
  constructor(private readonly ratio: number) {}

  /** What a piece gives. It is late by two samples in, which {@link flush} makes up for. */
  add(piece: Float32Array): Float32Array<ArrayBuffer> {
    const { before, ratio } = this;
    const at = (index: number) => index < 0 ? before[before.length + index] as number : piece[index] as number;
    const last = piece.length - 3;
    const count = Math.max(0, Math.floor((last - this.next) / ratio) + 1);
    const out = new Float32Array(count);
    for (let i = 0; i < count; i++) {
      const place = this.next + i * ratio;
      const index = Math.floor(place);
      // Catmull and Rom's cubic through the four samples around the place.
      const [a, b, c, d] = [at(index - 1), at(index), at(index + 1), at(index + 2)];
      const t = place - index;
      out[i] = b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
    }
    this.next += count * ratio - piece.length;
    this.before = Float32Array.from({ length: Reach }, (_, i) => at(piece.length - Reach + i));
    return out;
  }

  /** The last samples, when no more pieces come. */
  flush(): Float32Array<ArrayBuffer> { return this.add(new Float32Array(3)); }
}
