import type { Call, Song } from '../song/song.ts';
import type { Form } from '../time/form.ts';
import { CalledSource } from './calledSource.ts';
import { Clicks } from './clicks.ts';
import type { Deck } from './deck.ts';
import { Mixer } from './mixer.ts';
import { PlainDeck } from './plainDeck.ts';
import { SampleRate } from './source.ts';
import { readCall, readStems } from './stems.ts';
import { StretchDeck } from './stretchDeck.ts';
import { type Clock, type Plan, type State, type Track, Transport } from './transport.ts';

const PatienceSeconds = 1.5;

type Asked = Omit<Plan, 'track'> & { readonly track: Track | null };

/** The sound of the page: what plays, and through what. Without a sound card it keeps time all the same. */
export class Engine {
  private readonly transport: Transport;
  private readonly context: AudioContext | null;
  private readonly mixer: Mixer | null = null;
  private readonly stems: Track | null = null;
  private readonly called = new Map<Call, Track>();
  private readonly decks = new Map<Track, { plain: PlainDeck; stretch: { pitch: number; deck: Promise<StretchDeck> } | null }>();
  private isSilent = false;

  constructor(
    song: Song, form: Form, plan: Asked, changed: () => void, private readonly trouble: (words: string) => void) {
    this.context = makeContext();
    if (this.context) {
      this.mixer = new Mixer(this.context, song.parts.map(part => part.aside));
      if (song.sound.pieces > 0) this.stems = { source: readStems(song, error => trouble(error.message)), toMedia: seconds => seconds, toSong: seconds => seconds };
    }
    if (song.sound.missing) trouble(`This file has no sound. ${song.sound.missing}`);
    else if (!this.context) trouble('This browser plays no sound here: the page keeps time silently.');
    this.context?.addEventListener('statechange', () => this.lost());
    const clock = this.makeClock();
    const clicks = this.context && this.mixer ? new Clicks(this.context, this.mixer.click) : null;
    this.transport = new Transport(form, clock, this.whole(plan), asked => this.deckFor(asked), clicks, changed, (at, isCall) => this.mixer?.turn(at, isCall));
  }

  get place(): number { return this.transport?.place ?? 0; }

  get pace(): number { return this.transport?.pace ?? 0; }

  get state(): State { return this.transport?.state ?? 'stopped'; }

  get speed(): number { return this.transport.speed; }

  get passes(): number { return this.transport.passes; }

  get isCounting(): boolean { return this.transport.isCounting; }

  /** For tones that are not the song: the tuning help. Null without a sound card. */
  get output(): { context: AudioContext; mixer: Mixer } | null { return this.context && this.mixer ? { context: this.context, mixer: this.mixer } : null; }

  async play(): Promise<void> {
    try {
      await this.wake();
      await this.transport.play();
    } catch (error) {
      this.trouble(error instanceof Error ? error.message : String(error));
    }
  }

  stop(): void { this.transport.stop(); }

  seek(seconds: number): void { this.transport.seek(seconds); }

  setPlan(plan: Asked): void {
    this.transport.setPlan(this.whole(plan)).catch((error: unknown) => this.trouble(error instanceof Error ? error.message : String(error)));
  }

  setPart(part: number, level: number): void { this.mixer?.setPart(part, level); }

  /** @param aside From -1 on the left to 1 on the right. */
  setCall(level: number, aside: number): void { this.mixer?.setCall(level, aside); }

  setVolumes(all: number, click: number): void {
    this.mixer?.setMaster(all);
    this.mixer?.setClick(click);
  }

  /** Starts the sound card. Browsers allow it only after the page was touched, and some machines have none. */
  async wake(): Promise<void> {
    const { context } = this;
    if (!context || context.state === 'running') return;
    await Promise.race([context.resume(), new Promise(resolve => setTimeout(resolve, PatienceSeconds * 1000))]);
    const silent = (context.state as string) !== 'running';
    if (silent && !this.isSilent) this.trouble('No sound comes from this device: it is blocked, or there is no sound card. The page keeps time silently; press play again when it is there.');
    this.isSilent = silent;
  }

  // A call comes in, headphones go, the device sleeps: the sound's clock stands still, and the page with it.
  private lost(): void {
    if (this.isSilent || this.state !== 'playing' || this.context?.state === 'running') return;
    this.stop();
    this.trouble('The device took the sound away. Press play to go on from here.');
  }

  private whole(plan: Asked): Plan { return { ...plan, track: (plan.turns && this.trackOf(plan.turns.call)) ?? plan.track ?? this.stems }; }

  // Read when it is first asked for: much of a file is never called.
  private trackOf(call: Call): Track | null {
    if (!this.stems || !call.sound) return this.stems;
    let track = this.called.get(call);
    if (!track) {
      track = { ...this.stems, source: new CalledSource(this.stems.source, call.start, readCall(call.sound)) };
      this.called.set(call, track);
    }
    return track;
  }

  private makeClock(): Clock {
    const { context } = this;
    const silently = () => performance.now() / 1000;
    if (!context) return { now: silently, heard: silently };
    return {
      now: () => this.isSilent ? silently() : context.currentTime,
      heard: () => this.isSilent ? silently() : heardOf(context),
    };
  }

  private async deckFor(plan: Plan): Promise<Deck | null> {
    const { track } = plan;
    if (!track || !this.context || !this.mixer || this.isSilent) return null;
    const output = track === this.stems || plan.turns ? this.mixer.parts : this.mixer.take;
    let decks = this.decks.get(track);
    if (!decks) {
      decks = { plain: new PlainDeck(this.context, track.source, output), stretch: null };
      this.decks.set(track, decks);
    }
    if (plan.speed === 100 && !plan.ramp && Math.abs(plan.pitch) < 1e-6) return decks.plain;
    try {
      if (decks.stretch?.pitch !== plan.pitch) {
        // One pitch at a time: the samples of another take as much room again.
        const before = decks.stretch?.deck;
        before?.then(deck => setTimeout(() => deck.dispose(), 1000), () => {});
        decks.stretch = { pitch: plan.pitch, deck: StretchDeck.make(this.context, track.source, output, plan.pitch) };
      }
      return await decks.stretch.deck;
    } catch {
      this.trouble('This browser cannot keep the pitch at other speeds: it goes down and up with the speed, as on a tape.');
      return decks.plain;
    }
  }
}

function makeContext(): AudioContext | null {
  try {
    return new AudioContext({ sampleRate: SampleRate, latencyHint: 'interactive' });
  } catch {
    return null;
  }
}

// What leaves the speakers now was rendered a little earlier.
function heardOf(context: AudioContext): number {
  const { contextTime, performanceTime } = context.getOutputTimestamp?.() ?? {};
  if (contextTime && performanceTime) return Math.min(contextTime + (performance.now() - performanceTime) / 1000, context.currentTime);
  return context.currentTime - (context.outputLatency || 0);
}
