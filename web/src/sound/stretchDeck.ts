import type { MakeStretch, StretchNode } from 'signalsmith-stretch';
import { endOf, type Run } from '../time/runs.ts';
import type { Deck } from './deck.ts';
import type { Source } from './source.ts';
import { stretchModule } from './stretchCode.ts';

const Fade = 0.004;

/** Plays a source at any speed with its pitch kept, and at any pitch. */
export class StretchDeck implements Deck {
  readonly lead = 0.25;
  private readonly waiting: { run: Run; loop: { start: number; end: number } | null }[] = [];
  private current: Run | null = null;
  private readonly stopReading: () => void;

  private constructor(private readonly context: AudioContext, private readonly node: StretchNode, private readonly gate: GainNode, source: Source, private semitones: number) {
    this.stopReading = source.whenRead(index => {
      // The node takes the samples away, so it gets its own.
      const samples = (source.piece(index) ?? []).map(channel => channel.slice());
      void this.node.addBuffers(samples, samples.map(channel => channel.buffer));
    });
  }

  static async make(context: AudioContext, source: Source, output: AudioNode): Promise<StretchDeck> {
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
    return new StretchDeck(context, node, gate, source, 0);
  }

  /** Takes effect with the next run that is not seamless. */
  setPitch(semitones: number): void { this.semitones = semitones; }

  start(run: Run, loop: { start: number; end: number } | null): void {
    // The node repeats a loop by itself.
    if (run.isSeamless) return;
    this.waiting.push({ run, loop });
    this.tick(this.context.currentTime);
  }

  tick(now: number): void {
    // It knows one change to come: the next one waits until that is past.
    while (this.waiting.length > 0 && (this.current === null || this.current.at <= now)) {
      const { run, loop } = this.waiting.shift() as (typeof this.waiting)[number];
      this.current = run;
      void this.node.schedule({
        active: true, output: run.at, input: run.from, rate: run.rate, semitones: this.semitones,
        loopStart: loop?.start ?? 0, loopEnd: loop?.end ?? 0,
      });
      const gain = this.gate.gain;
      gain.cancelScheduledValues(run.at);
      gain.setValueAtTime(0, run.at);
      gain.linearRampToValueAtTime(1, run.at + 0.001);
      if (loop) continue;
      const ends = endOf(run);
      gain.setValueAtTime(1, Math.max(run.at + 0.001, ends - Fade));
      gain.linearRampToValueAtTime(0, ends);
    }
  }

  cut(at: number): void {
    this.waiting.length = 0;
    this.current = null;
    const gain = this.gate.gain;
    gain.cancelScheduledValues(at);
    gain.setValueAtTime(1, at);
    gain.linearRampToValueAtTime(0, at + Fade);
    void this.node.schedule({ active: false, output: at + 2 * Fade });
  }

  dispose(): void {
    this.stopReading();
    void this.node.stop();
    void this.node.dropBuffers();
    this.node.disconnect();
    this.gate.disconnect();
  }
}
