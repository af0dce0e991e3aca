import type { MakeStretch, StretchNode } from 'signalsmith-stretch';
import { endOf, type Run } from '../time/runs.ts';
import type { Deck } from './deck.ts';
import { Resampler } from './resampler.ts';
import type { Source } from './source.ts';
import { stretchModule } from './stretchCode.ts';

const FadeIn = 0.001;
const FadeOut = 0.004;

interface Waiting { readonly run: Run; readonly loop: { readonly start: number; readonly end: number } | null }

/**
 * Plays a source at any speed with its pitch kept, and at any pitch. For another pitch the samples are read at another pace and the stretch
 * takes that back: so it is exact, where moving the spectrum is off by some cents.
 */
export class StretchDeck implements Deck {
  readonly lead = 0.25;
  private readonly waiting: Waiting[] = [];
  private current: Run | null = null;
  private readonly stopReading: () => void;
  private readonly ratio: number;
  private isDisposed = false;

  private constructor(private readonly context: AudioContext, private readonly node: StretchNode, private readonly gate: GainNode, source: Source, semitones: number) {
    this.ratio = 2 ** (semitones / 12);
    const resamplers = Array.from({ length: source.channels }, () => this.ratio === 1 ? null : new Resampler(this.ratio));
    const add = (index: number) => {
      if (this.isDisposed) return;
      // The node takes the samples away, so it gets its own.
      const samples = (source.piece(index) ?? []).map((channel, c) => resamplers[c]?.add(channel) ?? channel.slice());
      void this.node.addBuffers(samples, samples.map(channel => channel.buffer));
    };
    // Piece by piece, so that the page is not held up.
    this.stopReading = source.whenRead(index => { setTimeout(() => add(index), 0); });
  }

  static async make(context: AudioContext, source: Source, output: AudioNode, semitones: number): Promise<StretchDeck> {
    // A file opened from disk can have a worklet from a data: URL only, and the page can have the same one for its side.
    const url = stretchModule();
    const { default: make } = await import(/* @vite-ignore */ url) as { default: MakeStretch };
    make.moduleUrl = url;
    const node = await make(context, { numberOfInputs: 1, numberOfOutputs: 1, outputChannelCount: [source.channels] });
    const gate = context.createGain();
    gate.channelCount = source.channels;
    gate.channelInterpretation = 'discrete';
    gate.gain.value = 0;
    node.connect(gate);
    gate.connect(output);
    return new StretchDeck(context, node, gate, source, semitones);
  }

  start(run: Run, loop: { start: number; end: number } | null): void {
    // The node repeats a loop by itself.
    if (run.isSeamless) return;
    this.waiting.push({ run, loop });
    this.tick(this.context.currentTime);
  }

  tick(now: number): void {
    // It knows one change to come: the next one waits until that is past.
    while (this.waiting.length > 0 && (this.current === null || this.current.at <= now)) {
      const { run, loop } = this.waiting.shift() as Waiting;
      this.current = run;
      void this.node.schedule({
        active: true, output: run.at, input: run.from / this.ratio, rate: run.rate / this.ratio,
        loopStart: (loop?.start ?? 0) / this.ratio, loopEnd: (loop?.end ?? 0) / this.ratio,
      });
      const gain = this.gate.gain;
      gain.cancelScheduledValues(run.at);
      gain.setValueAtTime(0, run.at);
      gain.linearRampToValueAtTime(1, run.at + FadeIn);
      if (loop) continue;
      const ends = endOf(run);
      gain.setValueAtTime(1, Math.max(run.at + FadeIn, ends - FadeOut));
      gain.linearRampToValueAtTime(0, ends);
    }
  }

  cut(at: number): void {
    this.waiting.length = 0;
    this.current = null;
    const gain = this.gate.gain;
    gain.cancelScheduledValues(at);
    gain.setValueAtTime(1, at);
    gain.linearRampToValueAtTime(0, at + FadeOut);
    void this.node.schedule({ active: false, output: at + 2 * FadeOut });
  }

  dispose(): void {
    this.isDisposed = true;
    this.stopReading();
    void this.node.dropBuffers();
    this.node.disconnect();
    this.gate.disconnect();
  }
}
