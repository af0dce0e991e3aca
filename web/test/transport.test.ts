import assert from 'node:assert/strict';
import { afterEach, beforeEach, mock, test } from 'node:test';
import type { Clicks } from '../src/sound/clicks.ts';
import type { Deck } from '../src/sound/deck.ts';
import { type Plan, Transport } from '../src/sound/transport.ts';
import { Form } from '../src/time/form.ts';
import { endOf, type Run } from '../src/time/runs.ts';
import { turnsOf } from '../src/time/turns.ts';
import { eightBars } from './song.ts';

let now = 0;
let runs: Run[] = [];
let cuts: number[] = [];
let turns: { at: number; isCall: boolean }[] = [];
let clicks: { at: number; isFirst: boolean }[] = [];
const form = new Form(eightBars());
const usual: Plan = { track: null, loop: null, turns: null, speed: 100, ramp: null, pitch: 0, click: false, countIn: 'never' };
const deck: Deck = { lead: 0.1, start: run => { runs.push(run); }, cut: at => { cuts.push(at); }, tick: () => {}, dispose: () => {} };
const clicker = { at: (at: number, isFirst: boolean) => { clicks.push({ at, isFirst }); }, cut: (at: number) => { clicks = clicks.filter(c => c.at < at - 1e-6); } } as unknown as Clicks;

const make = (plan: Partial<Plan>) => new Transport(form, { now: () => now, heard: () => now }, { ...usual, ...plan }, async () => deck, clicker, () => {}, (at, isCall) => { turns.push({ at, isCall }); });

function pass(seconds: number): void {
  for (let left = seconds; left > 1e-9; left -= 0.04) {
    now += 0.04;
    mock.timers.tick(40);
  }
}

beforeEach(() => {
  [now, runs, cuts, clicks, turns] = [100, [], [], [], []];
  mock.timers.enable({ apis: ['setInterval'] });
});
afterEach(() => mock.timers.reset());

test('the place follows the sound\'s clock from the moment the sound begins', async () => {
  const transport = make({});
  await transport.play();
  assert.equal(runs[0]?.at, 100.1);
  assert.equal(transport.place, 0);
  pass(2.1);
  assert.ok(Math.abs(transport.place - 2.02) < 0.03);
  transport.stop();
  assert.ok(Math.abs(transport.place - 2.02) < 0.03);
});

test('the song goes by at its speed while it is heard, and stands before and after', async () => {
  const track = { source: { ready: async () => {} }, toMedia: (song: number) => song * 2, toSong: (media: number) => media / 2 } as unknown as NonNullable<Plan['track']>;
  for (const [plan, pace] of [[{ speed: 50 }, 0.5], [{ speed: 150 }, 1.5], [{ speed: 100, track }, 0.5]] as const) {
    const transport = make({ ...plan, countIn: 'start' });
    await transport.play();
    assert.equal(transport.pace, 0);
    pass(6);
    assert.equal(transport.isCounting, false);
    assert.ok(Math.abs(transport.pace - pace) < 1e-9);
    transport.stop();
    assert.equal(transport.pace, 0);
  }
});

test('a loop\'s passes join without a gap, and only the first is not seamless', async () => {
  const transport = make({ loop: { start: 2, end: 4 } });
  await transport.play();
  pass(9);
  assert.ok(runs.length >= 5);
  for (let i = 1; i < runs.length; i++) assert.ok(Math.abs((runs[i] as Run).at - endOf(runs[i - 1] as Run)) < 1e-9);
  assert.deepEqual(runs.map(run => run.isSeamless), [false, ...runs.slice(1).map(() => true)]);
  assert.ok(transport.place >= 2 && transport.place < 4);
  transport.dispose();
});

test('after an hour of looping no time was lost and little is remembered', async () => {
  const transport = make({ loop: { start: 2, end: 4 } });
  await transport.play();
  const first = runs[0] as Run;
  // In the background a page is woken once a second.
  for (let i = 0; i < 3600; i++) {
    now += 1;
    mock.timers.tick(80);
  }
  const last = runs.at(-1) as Run;
  assert.ok(Math.abs(last.at - first.at - last.pass * 2) < 1e-6);
  assert.ok(last.at > now - 2);
  transport.dispose();
});

test('a ramp makes each pass as fast as it is to be', async () => {
  const transport = make({ loop: { start: 2, end: 4 }, ramp: { from: 50, to: 60, by: 5, passes: 1 } });
  await transport.play();
  pass(14);
  assert.deepEqual(runs.slice(0, 4).map(run => run.rate), [0.5, 0.55, 0.6, 0.6]);
  assert.equal(transport.speed, 60);
  transport.dispose();
});

test('a count before each time through takes a bar at the loop\'s speed', async () => {
  const transport = make({ loop: { start: 2, end: 4 }, speed: 50, countIn: 'loop' });
  await transport.play();
  pass(12);
  assert.ok(Math.abs((runs[1] as Run).at - endOf(runs[0] as Run) - 4) < 1e-9);
  assert.equal(clicks.filter(click => click.at < (runs[0] as Run).at).length, 4);
  assert.equal(clicks[0]?.isFirst, true);
  transport.dispose();
});

test('clicks stand on the beats, the first of a bar higher', async () => {
  const transport = make({ click: true, speed: 50 });
  await transport.play();
  pass(5);
  const heard = clicks.filter(click => click.at <= now);
  assert.deepEqual(heard.map(click => Number((click.at - 100.1).toFixed(6))), [0, 1, 2, 3, 4]);
  assert.deepEqual(heard.map(click => click.isFirst), [true, false, false, false, true]);
  transport.dispose();
});

test('clicks are not doubled by a change of speed', async () => {
  const transport = make({ click: true });
  await transport.play();
  pass(0.3);
  await transport.setPlan({ ...usual, click: true, speed: 50 });
  pass(4);
  const moments = clicks.map(click => click.at).sort((a, b) => a - b);
  for (let i = 1; i < moments.length; i++) assert.ok((moments[i] as number) - (moments[i - 1] as number) > 0.4, moments.join(' '));
  transport.dispose();
});

test('a change of speed goes on from where it is heard then', async () => {
  const transport = make({});
  await transport.play();
  pass(3);
  const before = transport.place;
  await transport.setPlan({ ...usual, speed: 50 });
  assert.ok(Math.abs(transport.place - before) < 1e-9);
  const changed = runs.at(-1) as Run;
  assert.equal(changed.rate, 0.5);
  assert.ok(Math.abs(changed.from - (changed.at - 100.1)) < 1e-9);
  pass(2);
  assert.ok(Math.abs(transport.place - (changed.from + (now - changed.at) * 0.5)) < 1e-9);
  transport.dispose();
});

test('play begins at the loop when it stands outside, and where it stands inside', async () => {
  const transport = make({ loop: { start: 4, end: 8 } });
  await transport.play();
  assert.equal(runs[0]?.from, 4);
  transport.stop();
  transport.seek(6);
  await transport.play();
  assert.equal(runs.at(-1)?.from, 6);
  transport.dispose();
});

test('at the end it stops and stands at the start', async () => {
  const transport = make({});
  transport.seek(15.5);
  await transport.play();
  pass(3);
  assert.equal(transport.state, 'stopped');
  assert.equal(transport.place, 0);
});

test('a stop while it is starting wins', async () => {
  let give: (deck: Deck) => void = () => {};
  const transport = new Transport(form, { now: () => now, heard: () => now }, usual, () => new Promise<Deck>(resolve => { give = resolve; }), null, () => {});
  const playing = transport.play();
  await Promise.resolve();
  transport.stop();
  give(deck);
  await playing;
  assert.equal(transport.state, 'stopped');
  assert.equal(runs.length, 0);
});

const way = turnsOf({ name: 'way', part: 0, start: 8, notes: [], phrases: [{ kind: 'fixed', first: 4, count: 1 }, { kind: 'free', first: 5, count: 2 }] }, form);

test('a phrase is called, then its bars are left for the answer, then the next one is called', async () => {
  const transport = make({ turns: way, countIn: 'loop' });
  await transport.play();
  pass(15);
  assert.deepEqual(runs.slice(0, 5).map(run => [run.from, run.to]), [[8, 10], [8, 10], [10, 14], [10, 14], [8, 10]]);
  assert.deepEqual(turns.slice(0, 5).map(turn => turn.isCall), [true, false, true, false, true]);
  for (let i = 1; i < runs.length; i++) {
    assert.ok(Math.abs((runs[i] as Run).at - endOf(runs[i - 1] as Run)) < 1e-9);
    assert.equal(turns[i]?.at, runs[i]?.at);
  }
  transport.dispose();
});

test('another speed in the midst of an answer leaves it an answer', async () => {
  const transport = make({ turns: way });
  await transport.play();
  // The next call is planned already.
  pass(3.5);
  assert.equal(turns.length, 3);
  await transport.setPlan({ ...usual, turns: way, speed: 50 });
  assert.deepEqual([runs.at(-1)?.pass, turns.at(-1)?.isCall, runs.at(-1)?.to], [1, false, 10]);
  assert.ok(Math.abs((runs.at(-1) as Run).from - 9.5) < 0.1);
  transport.dispose();
});

test('a jump to a phrase begins with its call', async () => {
  const transport = make({ turns: way });
  await transport.play();
  transport.seek(13);
  assert.deepEqual([runs.at(-1)?.from, runs.at(-1)?.pass, turns.at(-1)?.isCall], [10, 2, true]);
  transport.dispose();
});
