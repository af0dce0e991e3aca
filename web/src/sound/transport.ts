import type { Form, Range } from '../time/form.ts';
import { endOf, placeAt, speedOfPass, type Ramp, type Run } from '../time/runs.ts';
import { turnAt, turnFrom, type Turns } from '../time/turns.ts';
import type { Clicks } from './clicks.ts';
import type { Deck } from './deck.ts';
import type { Source } from './source.ts';

/** What is played, and how the song's seconds become its own. */
export interface Track {
  readonly source: Source;
  toMedia(song: number): number;
  toSong(media: number): number;
}

/** How it is to be played. Places are seconds of the song. */
export interface Plan {
  readonly track: Track | null;
  readonly loop: Range | null;
  /** Call and response; there is no loop beside it. */
  readonly turns: Turns | null;
  /** Percent of the song's tempo. */
  readonly speed: number;
  readonly ramp: Ramp | null;
  /** Semitones, fractions too. */
  readonly pitch: number;
  readonly click: boolean;
  readonly countIn: 'never' | 'start' | 'loop';
}

export type State = 'stopped' | 'starting' | 'playing';

/** Makes the deck that a plan needs; null when nothing can sound. */
export type DeckMaker = (plan: Plan) => Promise<Deck | null>;

/** Lets called phrases be heard, or not, from a moment of the sound's clock on. */
export type TurnGate = (at: number, isCall: boolean) => void;

/** The sound's clock in seconds, and what of it has reached the ear. */
export interface Clock { now(): number; heard(): number }

/** Loops are planned this far ahead, in seconds: more than a page in the background sleeps. */
const Horizon = 1.6;
const Tail = 1.2;

/** A recording's pace is that of so many seconds. */
const Stride = 0.05;

/** Plays, stops, jumps, loops and changes speed. It knows at each moment which place of the song is heard. */
export class Transport {
  state: State = 'stopped';
  private runs: Run[] = [];
  private rest = 0;
  private pass = 0;
  private deck: Deck | null = null;
  private start = 0;
  private clicked = 0;
  private timer: ReturnType<typeof setInterval> | undefined;

  constructor(
    private readonly form: Form, private readonly clock: Clock, private plan: Plan, private readonly makeDeck: DeckMaker,
    private readonly clicks: Clicks | null, private readonly changed: () => void, private readonly gate: TurnGate = () => {}) {}

  /** Seconds of the song that are heard now, or where it will start. */
  get place(): number { return this.runs.length === 0 ? this.rest : this.toSong(placeAt(this.runs, this.clock.heard())); }

  /** Seconds of the song that go by in a second, now; 0 while it stands or the count is heard. */
  get pace(): number {
    const heard = this.clock.heard();
    const run = this.runs.findLast(r => r.at <= heard);
    if (!run || heard >= endOf(run)) return 0;
    if (!this.plan.track) return run.rate;
    const [place, next] = [placeAt([run], heard), placeAt([run], heard) + run.rate * Stride];
    return (this.toSong(next) - this.toSong(place)) / Stride;
  }

  /** The speed now, in percent. */
  get speed(): number { return this.speedOf(this.heardRun?.pass ?? 0); }

  /** Times through the loop that are done, or turns. */
  get passes(): number { return this.heardRun?.pass ?? 0; }

  /** Whether the count before the music is heard. */
  get isCounting(): boolean { return this.state === 'playing' && this.clock.heard() < (this.runs[0]?.at ?? 0); }

  async play(): Promise<void> {
    if (this.state !== 'stopped') return;
    this.state = 'starting';
    const mine = ++this.start;
    this.changed();
    try {
      const from = this.startingPlace(this.rest);
      const { pass } = this;
      await this.plan.track?.source.ready({ start: this.toMedia(from), end: this.toMedia(from) + 1 });
      const deck = await this.makeDeck(this.plan);
      if (mine !== this.start) return;
      this.deck = deck;
      this.pass = pass;
      this.state = 'playing';
      this.begin(from, this.plan.countIn !== 'never');
      this.timer = setInterval(() => this.tick(), 80);
    } catch (error) {
      if (mine === this.start) this.state = 'stopped';
      throw error;
    } finally {
      this.changed();
    }
  }

  stop(): void {
    if (this.state === 'stopped') return;
    this.rest = this.place;
    this.start++;
    this.silence();
    this.state = 'stopped';
    this.changed();
  }

  /** Goes to a place of the song, playing on when it plays. */
  seek(song: number): void {
    this.rest = Math.min(Math.max(0, song), this.form.song.seconds);
    if (this.state === 'playing') {
      this.silence();
      this.begin(this.startingPlace(this.rest), false);
      this.timer = setInterval(() => this.tick(), 80);
    }
    this.changed();
  }

  /** Takes up another plan, without stopping where it plays. */
  async setPlan(plan: Plan): Promise<void> {
    const before = this.plan;
    const place = this.place;
    this.plan = plan;
    if (this.state === 'stopped') return;
    if (before.click !== plan.click) this.takeBackClicks();
    const isSame = before.track === plan.track && before.loop === plan.loop && before.turns === plan.turns && before.speed === plan.speed && before.ramp === plan.ramp && before.pitch === plan.pitch;
    if (isSame || this.state === 'starting') return;
    const mine = ++this.start;
    if (before.track !== plan.track) {
      this.rest = place;
      await plan.track?.source.ready({ start: this.toMedia(place), end: this.toMedia(place) + 1 });
    }
    const deck = await this.makeDeck(plan);
    if (mine !== this.start || this.state !== 'playing') return;
    if (before.track !== plan.track) {
      this.silence();
      this.deck = deck;
      this.begin(this.startingPlace(this.rest), false);
      this.timer = setInterval(() => this.tick(), 80);
      return;
    }
    this.change(deck, before);
  }

  dispose(): void { this.silence(); }

  private get heardRun(): Run | undefined {
    const heard = this.clock.heard();
    return this.runs.findLast(run => run.at <= heard) ?? this.runs[0];
  }

  private toMedia(song: number): number { return this.plan.track ? this.plan.track.toMedia(song) : song; }

  private toSong(media: number): number { return this.plan.track ? this.plan.track.toSong(media) : media; }

  private speedOf(pass: number): number { return this.plan.ramp && this.plan.loop ? speedOfPass(this.plan.ramp, pass) : this.plan.speed; }

  // A loop starts at its start unless one stands inside it, and a turn at its own.
  private startingPlace(song: number): number {
    const { loop, turns } = this.plan;
    this.pass = turns ? turnFrom(turns, song) : 0;
    if (turns) return turnAt(turns, this.pass)?.start ?? 0;
    if (loop && (song < loop.start - 1e-3 || song >= loop.end - 0.02)) return loop.start;
    return song >= this.form.song.seconds - 0.02 ? 0 : song;
  }

  private begin(from: number, counts: boolean): void {
    let at = this.clock.now() + (this.deck?.lead ?? 0.05);
    const rate = this.speedOf(this.pass) / 100;
    if (counts) at = this.count(from, at + 0.05, rate);
    this.runs = [];
    this.clicked = at;
    this.add(this.runFrom(this.toMedia(from), at, false));
  }

  // What is repeated in a time through, from 0; null when nothing is.
  private rangeOf(pass: number): Range | null {
    const { turns, loop } = this.plan;
    return turns ? turnAt(turns, pass) ?? null : loop;
  }

  private runFrom(from: number, at: number, isSeamless: boolean): Run {
    const range = this.rangeOf(this.pass);
    const end = this.toMedia(this.form.song.seconds) + Tail;
    return { at, from, to: range ? this.toMedia(range.end) : Math.max(end, from + 0.01), rate: this.speedOf(this.pass) / 100, pass: this.pass, isSeamless };
  }

  private add(run: Run): void {
    this.runs.push(run);
    if (this.plan.turns) this.gate(run.at, turnAt(this.plan.turns, run.pass)?.isCall ?? false);
    this.deck?.start(run, this.nodeLoop());
    this.click();
  }

  // A loop that the deck may repeat by itself: no count between, one speed.
  private nodeLoop(): Range | null {
    const { loop, ramp, countIn } = this.plan;
    return loop && !ramp && countIn !== 'loop' ? { start: this.toMedia(loop.start), end: this.toMedia(loop.end) } : null;
  }

  // A change of speed, pitch or loop while it plays: from a moment ahead on, from the place that is played then.
  private change(deck: Deck | null, before: Plan): void {
    const other = deck !== this.deck;
    const at = this.clock.now() + (deck?.lead ?? 0.05);
    const from = placeAt(this.runs, at);
    this.deck?.cut(at);
    this.deck = deck;
    this.takeBackClicks(at);
    // A pass that was planned ahead is not begun yet.
    const pass = this.runs.findLast(run => run.at <= at)?.pass ?? this.pass;
    const goesOn = before.loop === this.plan.loop && before.turns === this.plan.turns;
    const song = goesOn && this.plan.turns ? this.toSong(from) : this.startingPlace(this.toSong(from));
    this.pass = goesOn && before.ramp === this.plan.ramp ? pass : this.plan.turns ? this.pass : 0;
    this.runs = this.runs.filter(run => run.at < at).map(run => endOf(run) > at ? { ...run, to: run.from + (at - run.at) * run.rate } : run);
    this.clicked = at;
    if (other) deck?.tick(this.clock.now());
    this.add(this.runFrom(this.toMedia(song), at, false));
  }

  private tick(): void {
    const now = this.clock.now();
    this.deck?.tick(now);
    const isRound = this.rangeOf(0) !== null;
    for (let last = this.runs.at(-1); last && endOf(last) < now + Horizon; last = this.runs.at(-1)) {
      const range = this.rangeOf(last.pass + 1);
      if (!range) break;
      this.pass = last.pass + 1;
      const rate = this.speedOf(this.pass) / 100;
      // Turns answer each other: nothing is counted between them.
      const counts = this.plan.countIn === 'loop' && !this.plan.turns;
      const at = counts ? this.count(range.start, endOf(last), rate) : endOf(last);
      this.add(this.runFrom(this.toMedia(range.start), at, !counts && rate === last.rate && this.nodeLoop() !== null));
    }
    this.click();
    // What is past is forgotten, but for what may still be on its way to the ear.
    while (this.runs.length > 1 && (this.runs[1] as Run).at < now - 2) this.runs.shift();
    const last = this.runs.at(-1);
    if (!isRound && last && this.clock.heard() >= endOf(last)) {
      this.silence();
      this.rest = 0;
      this.state = 'stopped';
    }
    this.changed();
  }

  private silence(): void {
    clearInterval(this.timer);
    this.deck?.cut(this.clock.now() + 0.005);
    this.clicks?.cut(this.clock.now());
    this.runs = [];
  }

  /** Clicks a count before a place from a moment on; returns when the music starts. */
  private count(song: number, at: number, rate: number): number {
    const lengths = this.form.bar(this.form.barAt(song)).count;
    let moment = at;
    lengths.forEach((length, beat) => {
      this.clicks?.at(moment, beat === 0);
      moment += length / rate;
    });
    return moment;
  }

  private click(): void {
    const until = this.clock.now() + Horizon;
    if (!this.plan.click || !this.clicks) {
      this.clicked = Math.max(this.clicked, this.clock.now());
      return;
    }
    for (const run of this.runs) {
      const [first, last] = [this.toSong(run.from), this.toSong(run.to)];
      for (let bar = this.form.barAt(first); bar < this.form.barCount && this.form.startOf(bar) < last; bar++) {
        const { beats, start } = this.form.bar(bar);
        for (const beat of beats) {
          if (beat < first - 1e-6 || beat >= last - 1e-6) continue;
          const at = run.at + (this.toMedia(beat) - run.from) / run.rate;
          if (at >= this.clicked - 1e-6 && at < until) this.clicks.at(at, Math.abs(beat - start) < 1e-6);
        }
      }
    }
    this.clicked = Math.max(this.clicked, until);
  }

  private takeBackClicks(from = this.clock.now()): void {
    this.clicks?.cut(from);
    this.clicked = from;
  }
}
