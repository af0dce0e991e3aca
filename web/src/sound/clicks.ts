/** Short tones at moments of the sound's clock: a click on each beat, and the count before the music. */
export class Clicks {
  private readonly high: AudioBuffer;
  private readonly low: AudioBuffer;
  private readonly planned = new Set<{ readonly node: AudioBufferSourceNode; readonly at: number }>();

  constructor(private readonly context: BaseAudioContext, private readonly output: AudioNode) {
    this.high = tone(context, 1760);
    this.low = tone(context, 1320);
  }

  at(clock: number, isFirst: boolean): void {
    const node = this.context.createBufferSource();
    node.buffer = isFirst ? this.high : this.low;
    node.connect(this.output);
    node.start(clock);
    const entry = { node, at: clock };
    this.planned.add(entry);
    node.onended = () => {
      this.planned.delete(entry);
      node.disconnect();
    };
  }

  /** Takes back those that are not heard yet. */
  cut(clock: number): void {
    for (const { node, at } of this.planned) if (at >= clock - 1e-6) node.stop();
  }
}

// As the sound that Fretlore writes has it: a sine that dies away.
function tone(context: BaseAudioContext, hertz: number): AudioBuffer {
  const buffer = context.createBuffer(1, Math.round(context.sampleRate / 25), context.sampleRate);
  const samples = buffer.getChannelData(0);
  for (let i = 0; i < samples.length; i++) {
    const seconds = i / context.sampleRate;
    samples[i] = 0.35 * Math.sin(2 * Math.PI * hertz * seconds) * Math.exp(-seconds * 200);
  }
  return buffer;
}
