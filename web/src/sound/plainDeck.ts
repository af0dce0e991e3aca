import { endOf, type Run } from '../time/runs.ts';
import type { Deck } from './deck.ts';
import { SampleRate, type Source } from './source.ts';

const FadeIn = 0.001;
const FadeOut = 0.004;

/** How far ahead pieces are handed to the sound card, in seconds: more than a page in the background sleeps. */
const Horizon = 15;

interface Playing { readonly run: Run; readonly gain: GainNode; readonly ends: number; next: number; readonly nodes: Set<AudioBufferSourceNode> }

/** Plays a source as it is: samples untouched at full speed; at other speeds the pitch goes along, as on a tape. */
export class PlainDeck implements Deck {
  readonly lead = 0.06;
  private readonly playing = new Set<Playing>();

  constructor(private readonly context: BaseAudioContext, private readonly source: Source, private readonly output: AudioNode) {}

  start(run: Run): void {
    const gain = this.context.createGain();
    gain.channelCount = this.source.channels;
    gain.channelInterpretation = 'discrete';
    const ends = endOf(run);
    gain.gain.setValueAtTime(0, run.at);
    gain.gain.linearRampToValueAtTime(1, run.at + FadeIn);
    gain.gain.setValueAtTime(1, Math.max(run.at + FadeIn, ends - FadeOut));
    gain.gain.linearRampToValueAtTime(0, ends);
    gain.connect(this.output);
    const playing = { run, gain, ends, next: Math.floor(run.from / this.source.pieceSeconds), nodes: new Set<AudioBufferSourceNode>() };
    this.playing.add(playing);
    this.feed(playing, this.context.currentTime);
  }

  tick(now: number): void {
    for (const playing of this.playing) {
      this.feed(playing, now);
      if (playing.ends > now - 0.1 || playing.nodes.size > 0) continue;
      playing.gain.disconnect();
      this.playing.delete(playing);
    }
  }

  cut(at: number): void {
    for (const playing of this.playing) {
      if (playing.ends <= at) continue;
      playing.next = Number.POSITIVE_INFINITY;
      const gain = playing.gain.gain;
      gain.cancelScheduledValues(at);
      gain.setValueAtTime(playing.run.at < at ? 1 : 0, at);
      gain.linearRampToValueAtTime(0, at + FadeOut);
      for (const node of playing.nodes) node.stop(Math.max(at + FadeOut, this.context.currentTime));
    }
  }

  dispose(): void { this.cut(this.context.currentTime); }

  private feed(playing: Playing, now: number): void {
    const { run, nodes } = playing;
    const size = this.source.pieceSeconds;
    while (playing.next < this.source.pieceCount && playing.next * size < run.to) {
      const from = Math.max(run.from, playing.next * size);
      const at = run.at + (from - run.from) / run.rate;
      const samples = this.source.piece(playing.next);
      if (at > now + Horizon || !samples) return;
      const buffer = this.context.createBuffer(samples.length, (samples[0] as Float32Array).length, SampleRate);
      samples.forEach((channel, c) => buffer.copyToChannel(channel, c));
      const length = Math.min(run.to, (playing.next + 1) * size) - from;
      // What comes late, after a page slept or while it is still read, comes in where the music is by then.
      const late = Math.min(length, Math.max(0, now - at) * run.rate);
      const node = this.context.createBufferSource();
      node.buffer = buffer;
      node.playbackRate.value = run.rate;
      node.connect(playing.gain);
      node.start(at + late / run.rate, from - playing.next * size + late, length - late);
      nodes.add(node);
      node.onended = () => {
        nodes.delete(node);
        node.disconnect();
      };
      playing.next++;
    }
  }
}
