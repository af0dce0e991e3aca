import { batch, computed, effect, signal, type Signal } from '@preact/signals';
import type { Call, Song, Step, Stretch } from '../song/song.ts';
import { Engine } from '../sound/engine.ts';
import type { Source } from '../sound/source.ts';
import type { Track } from '../sound/transport.ts';
import { Form, type Range } from '../time/form.ts';
import type { Ramp } from '../time/runs.ts';
import { Sync, type SyncPoint } from '../time/sync.ts';
import { type Turn, turnAt, turnFrom, type Turns, turnsOf } from '../time/turns.ts';
import { type Kept, type KeptLoop, type Likes, type StepProgress, usualKept, usualLikes } from './kept.ts';
import { Memory } from './memory.ts';

export const SlowestSpeed = 25;
export const FastestSpeed = 150;
export const MostSemitones = 12;

/** A loop with the name it is shown by. */
export interface Loop extends Range { readonly name: string }

const LikesKey = 'fretlore:likes';

/** Everything the page can do, in one place: what is set, what is heard, what is remembered. */
export class Player {
  readonly form: Form;
  readonly memory: Memory;
  readonly likes: Signal<Likes>;
  readonly kept: Signal<Kept>;
  readonly engine: Engine;

  readonly state = signal<'stopped' | 'starting' | 'playing'>('stopped');
  /** Changes at each bar, and when it is moved. */
  readonly bar = signal(0);
  readonly loop = signal<Loop | null>(null);
  /** Call and response; there is no loop beside it. */
  readonly turns = signal<Turns | null>(null);
  readonly ramp = signal<Ramp | null>(null);
  readonly step = signal<number | null>(null);
  readonly passes = signal(0);
  readonly speedNow = signal(100);
  readonly counting = signal(false);
  /** The player's own recording, when one was added. */
  readonly recording = signal<{ readonly name: string; readonly key: string; readonly source: Source } | null>(null);
  /** The recording as it is played in place of the song's own sound; null for that. */
  readonly take = signal<Track | null>(null);
  /** Something that went wrong, in words; shown until it is put away. */
  readonly trouble = signal<string | null>(null);
  /** Said by screen readers. */
  readonly said = signal('');
  private readonly soloed = signal<number[] | null>(null);
  private stepClock = 0;

  readonly mine = computed(() => Math.min(this.kept.value.mine, this.song.parts.length - 1));
  readonly withoutMine = computed(() => (this.kept.value.levels[this.mine.value] ?? 1) === 0);
  /** Whose turn it is in call and response. */
  readonly turn = computed<Turn | null>(() => this.turns.value ? turnAt(this.turns.value, this.passes.value) ?? null : null);
  /** In semitones: what was asked for and the player's A. */
  readonly pitch = computed(() => this.kept.value.semitones + 12 * Math.log2(this.likes.value.a4 / 440));

  constructor(readonly song: Song, storage: () => Storage) {
    this.form = new Form(song);
    this.memory = new Memory(storage);
    this.likes = signal(this.memory.read(LikesKey, usualLikes));
    this.kept = signal(this.memory.read(this.songKey, usualKept(song.parts.length)));
    this.engine = new Engine(song, this.form, this.plan(), () => this.heard(), trouble => { this.trouble.value = trouble; });
    this.speedNow.value = this.kept.value.speed;
    effect(() => this.memory.write(LikesKey, this.likes.value));
    effect(() => this.memory.write(this.songKey, this.kept.value));
    effect(() => this.engine.setPlan(this.plan()));
    effect(() => {
      const { levels } = this.kept.value;
      const soloed = this.soloed.value;
      const call = this.turns.value?.call;
      // Who answers is not heard besides; muted for the student to play, the phrases are heard all the same.
      song.parts.forEach((_, part) => this.engine.setPart(part, part === call?.part || (soloed && !soloed.includes(part)) ? 0 : levels[part] ?? 1));
      if (call) this.engine.setCall(levels[call.part] || 1, song.parts[call.part]?.aside ?? 0);
    });
    effect(() => {
      const turn = this.turn.value;
      if (turn && this.state.value === 'playing' && !this.counting.value) this.say(this.turnWords(turn));
    });
    effect(() => this.engine.setVolumes(this.likes.value.volume, this.likes.value.clickVolume));
  }

  get place(): number { return this.engine.place; }

  /** Seconds of the song that go by in a second, now. */
  get pace(): number { return this.engine.pace; }

  setLikes(change: Partial<Likes>): void { this.likes.value = { ...this.likes.value, ...change }; }

  setKept(change: Partial<Kept>): void { this.kept.value = { ...this.kept.value, ...change }; }

  toggle(): void {
    if (this.state.value === 'stopped') void this.engine.play();
    else this.engine.stop();
  }

  stop(): void { this.engine.stop(); }

  seek(seconds: number): void {
    const loop = this.loop.value;
    if (loop && (seconds < loop.start || seconds >= loop.end)) this.loop.value = null;
    const turns = this.turns.value?.turns;
    if (turns && !turns.some(turn => seconds >= turn.start - 1e-3 && seconds < turn.end)) this.turns.value = null;
    this.engine.seek(seconds);
    this.heard();
    this.say(this.form.whereabouts(this.place, false));
  }

  seekBar(bar: number): void { this.seek(this.form.startOf(Math.min(Math.max(0, bar), this.form.barCount - 1))); }

  /** Bars on or back; in call and response phrases. */
  move(by: number): void {
    const [turns, turn] = [this.turns.value, this.turn.value];
    if (turns && turn) this.callPhrases(turns.call, Math.min(Math.max(0, turn.phrase + by), turns.call.phrases.length - 1));
    else this.seekBar(this.bar.value + by);
  }

  /** The start of the loop, of call and response, or of the song. */
  toStart(): void {
    if (this.turns.value) this.callPhrases(this.turns.value.call);
    else this.seek(this.loop.value?.start ?? 0);
  }

  /** The start of the section before or after. */
  seekSection(direction: -1 | 1): void {
    const starts = this.song.stretches.filter(s => s.kind === 'section').map(s => s.first);
    const now = this.form.barAt(this.place);
    const next = direction > 0 ? starts.find(first => first > now) : starts.findLast(first => first < now);
    this.seekBar(next ?? (direction > 0 ? now : 0));
  }

  setSpeed(percent: number): void {
    batch(() => {
      this.ramp.value = null;
      this.setKept({ speed: Math.min(Math.max(Math.round(percent), SlowestSpeed), FastestSpeed) });
      this.speedNow.value = this.kept.value.speed;
    });
  }

  setLevel(part: number, level: number): void {
    const levels = this.song.parts.map((_, i) => i === part ? level : this.kept.value.levels[i] ?? 1);
    this.setKept({ levels });
  }

  toggleMine(): void {
    const part = this.mine.value;
    this.setLevel(part, this.withoutMine.value ? 1 : 0);
    this.say(this.withoutMine.value ? `Without ${this.song.parts[part]?.title}` : `With ${this.song.parts[part]?.title}`);
  }

  /** Hear one part alone, or all again. */
  listenTo(part: number | null): void { this.soloed.value = part === null ? null : [part]; }

  get alone(): number | null { return this.soloed.value?.[0] ?? null; }

  setLoop(loop: Loop | null, start = true): void {
    batch(() => {
      this.loop.value = loop;
      if (loop) this.turns.value = null;
      else this.ramp.value = null;
    });
    if (loop && start && (this.place < loop.start - 1e-3 || this.place >= loop.end)) this.engine.seek(loop.start);
    this.heard();
    this.say(loop ? `Loop: ${loop.name}, ${this.form.wordsOf(loop)}` : 'No loop');
  }

  /** Calls phrases for the student to answer, from one of them on; null to stop that. */
  callPhrases(call: Call | null, phrase = 0): void {
    const turns = call && (this.turns.value?.call === call ? this.turns.value : turnsOf(call, this.form));
    batch(() => {
      this.turns.value = turns;
      if (!turns) return;
      this.loop.value = null;
      this.ramp.value = null;
      this.take.value = null;
      if (this.mine.value !== turns.call.part) this.setKept({ mine: turns.call.part });
    });
    const from = turns?.turns.find(turn => turn.phrase === phrase);
    if (from) this.engine.seek(from.start);
    this.heard();
    this.say(turns ? `Call and response: ${turns.call.phrases.length} phrases. ${from ? this.turnWords(from) : ''}` : 'No call and response');
  }

  /** Call and response where it stands, or in the song's first free stretch; off when it is on. */
  toggleCalls(): void {
    const { calls } = this.song;
    if (calls.length === 0) this.say('This song has no free stretch to answer in.');
    else if (this.turns.value) this.callPhrases(null);
    else {
      const phraseHere = (call: Call) => call.phrases.findIndex(phrase => this.bar.value >= phrase.first && this.bar.value < phrase.first + phrase.count);
      const call = calls.find(c => phraseHere(c) >= 0) ?? calls[0] as Call;
      this.callPhrases(call, Math.max(0, phraseHere(call)));
    }
  }

  /** Whose turn it is, as shown and said. */
  turnWords(turn: Turn): string {
    const count = this.turns.value?.call.phrases.length ?? 0;
    return turn.isCall ? `Listen: phrase ${turn.phrase + 1} of ${count}, ${this.form.wordsOf(turn)}` : `Your turn: answer in ${this.form.wordsOf(turn)}`;
  }

  loopStretch(stretch: Stretch, name = stretch.name): void { this.setLoop({ name, ...this.form.rangeOf(stretch) }); }

  loopBars(first: number, last: number): void {
    const range = this.form.rangeOfBars(first, last);
    const words = this.form.wordsOf(range);
    this.setLoop({ name: words.charAt(0).toUpperCase() + words.slice(1), ...range }, false);
  }

  keepLoop(name: string): void {
    const loop = this.loop.value;
    if (!loop) return;
    const kept: KeptLoop = { name, start: loop.start, end: loop.end, speed: this.kept.value.speed };
    this.setKept({ loops: [...this.kept.value.loops.filter(l => l.name !== name), kept] });
  }

  dropLoop(name: string): void { this.setKept({ loops: this.kept.value.loops.filter(l => l.name !== name) }); }

  progressOf(step: Step): StepProgress {
    return this.kept.value.steps[step.title] ?? { seconds: 0, speed: 0, done: false, goal: step.speeds[0] ?? 100 };
  }

  setProgress(step: Step, change: Partial<StepProgress>): void {
    this.setKept({ steps: { ...this.kept.value.steps, [step.title]: { ...this.progressOf(step), ...change } } });
  }

  /** Turns to a step of the lesson: its stretch as a loop, at the speed it was left at. */
  openStep(index: number | null): void {
    const step = index === null ? undefined : this.song.steps[index];
    this.step.value = step ? index : null;
    const stretch = step?.teaches.map(name => this.form.find(name)).find(found => found !== undefined);
    if (!step || !stretch) return;
    batch(() => {
      if (stretch.part !== undefined && stretch.part !== this.mine.value) this.setKept({ mine: stretch.part });
      this.setSpeed(this.progressOf(step).goal);
      this.loopStretch(stretch, step.title);
    });
  }

  /** Plays the recording, lined up by points. */
  playTake(points: readonly SyncPoint[]): void {
    this.turns.value = null;
    const source = this.recording.value?.source;
    const sync = new Sync(points);
    this.take.value = source ? { source, toMedia: song => sync.toTake(song), toSong: media => sync.toSong(media) } : null;
  }

  playStems(): void { this.take.value = null; }

  say(words: string): void { this.said.value = words; }

  private get songKey(): string { return `fretlore:song:${this.song.id}`; }

  private plan() {
    const { click, countIn } = this.likes.value;
    return {
      track: this.take.value, loop: this.loop.value, turns: this.turns.value, speed: this.kept.value.speed, ramp: this.ramp.value, pitch: this.pitch.value, click,
      countIn,
    };
  }

  // Told several times a second while it plays.
  private heard(): void {
    const { engine } = this;
    if (!engine) return;
    batch(() => {
      const bar = this.form.barAt(engine.place);
      if (this.state.value !== engine.state) this.stepClock = performance.now();
      if (bar !== this.bar.value && this.likes.value.saysBars && engine.state === 'playing') this.say(this.form.whereabouts(engine.place, false));
      this.state.value = engine.state;
      this.bar.value = bar;
      this.passes.value = this.turns.value && engine.state === 'stopped' ? turnFrom(this.turns.value, engine.place) : engine.passes;
      this.speedNow.value = engine.state === 'stopped' ? this.kept.value.speed : engine.speed;
      this.counting.value = engine.isCounting;
    });
    this.countPractice();
  }

  private countPractice(): void {
    const step = this.step.value === null ? undefined : this.song.steps[this.step.value];
    if (!step || this.engine.state !== 'playing') return;
    const seconds = (performance.now() - this.stepClock) / 1000;
    if (seconds < 5) return;
    this.stepClock = performance.now();
    const before = this.progressOf(step);
    this.setProgress(step, { seconds: before.seconds + seconds, speed: Math.max(before.speed, this.speedNow.value) });
  }
}
