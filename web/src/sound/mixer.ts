/** The way from the parts to the speakers: a level and a place for each part, one for the clicks, one for all. */
export class Mixer {
  /** One channel a part. */
  readonly parts: AudioNode;
  /** The player's own recording, in stereo. */
  readonly take: GainNode;
  readonly click: GainNode;
  private readonly levels: GainNode[];
  private readonly master: GainNode;

  constructor(private readonly context: BaseAudioContext, asides: readonly number[]) {
    this.master = context.createGain();
    this.master.connect(context.destination);
    const splitter = context.createChannelSplitter(Math.max(1, asides.length));
    this.levels = asides.map((aside, part) => {
      const level = context.createGain();
      const pan = context.createStereoPanner();
      pan.pan.value = aside;
      splitter.connect(level, part);
      level.connect(pan);
      pan.connect(this.master);
      return level;
    });
    this.parts = splitter;
    this.take = context.createGain();
    this.take.connect(this.master);
    this.click = context.createGain();
    this.click.connect(this.master);
  }

  /** Levels are from 0 to 1, as heard: half is half as loud. */
  setPart(part: number, level: number): void { this.glide(this.levels[part], level); }

  setClick(level: number): void { this.glide(this.click, level); }

  setMaster(level: number): void { this.glide(this.master, level); }

  private glide(node: GainNode | undefined, level: number): void {
    if (!node) return;
    // Twice as loud is about ten decibels (Stevens).
    const gain = level <= 0 ? 0 : 10 ** (Math.log2(level) * 10 / 20);
    node.gain.setTargetAtTime(gain, this.context.currentTime, 0.015);
  }
}
