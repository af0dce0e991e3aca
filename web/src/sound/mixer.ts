/** The way from the parts to the speakers: a level and a place for each part, one for the clicks, one for all. */
export class Mixer {
  /** One channel a part, and one more for phrases that are called. */
  readonly parts: AudioNode;
  /** The player's own recording, in stereo. */
  readonly take: GainNode;
  readonly click: GainNode;
  private readonly levels: GainNode[];
  private readonly call: { readonly gate: GainNode; readonly level: GainNode; readonly pan: StereoPannerNode };
  private readonly master: GainNode;

  constructor(private readonly context: BaseAudioContext, asides: readonly number[]) {
    this.master = context.createGain();
    this.master.connect(context.destination);
    const splitter = context.createChannelSplitter(asides.length + 1);
    this.levels = asides.map((aside, part) => {
      const level = context.createGain();
      const pan = context.createStereoPanner();
      pan.pan.value = aside;
      splitter.connect(level, part);
      level.connect(pan);
      pan.connect(this.master);
      return level;
    });
    this.call = { gate: context.createGain(), level: context.createGain(), pan: context.createStereoPanner() };
    this.call.gate.gain.value = 0;
    splitter.connect(this.call.gate, asides.length);
    this.call.gate.connect(this.call.level).connect(this.call.pan).connect(this.master);
    this.parts = splitter;
    this.take = context.createGain();
    this.take.connect(this.master);
    this.click = context.createGain();
    this.click.connect(this.master);
  }

  /** Levels are from 0 to 1, as heard: half is half as loud. */
  setPart(part: number, level: number): void { this.glide(this.levels[part], level); }

  /** Where the phrases stand that are called, and how loud they are. */
  setCall(level: number, aside: number): void {
    this.glide(this.call.level, level);
    this.call.pan.pan.value = aside;
  }

  /** Lets the called phrases be heard, or not, from a moment of the sound's clock on. */
  turn(at: number, isCall: boolean): void {
    const { gain } = this.call.gate;
    gain.cancelScheduledValues(at);
    gain.setValueAtTime(isCall ? 1 : 0, at);
  }

  setClick(level: number): void { this.glide(this.click, level); }

  setMaster(level: number): void { this.glide(this.master, level); }

  private glide(node: GainNode | undefined, level: number): void {
    if (!node) return;
    // Twice as loud is about ten decibels (Stevens).
    const gain = level <= 0 ? 0 : 10 ** (Math.log2(level) * 10 / 20);
    node.gain.setTargetAtTime(gain, this.context.currentTime, 0.015);
  }
}
