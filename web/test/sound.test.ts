import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { PlainDeck } from '../src/sound/plainDeck.ts';
import { Resampler } from '../src/sound/resampler.ts';
import { PiecedSource, SampleRate } from '../src/sound/source.ts';
import { changedCode } from '../src/sound/stretchCode.ts';

const sine = (hertz: number, length: number, from = 0) => Float32Array.from({ length }, (_, i) => Math.sin(2 * Math.PI * hertz * (from + i) / 48000));

test('a sine read at another pace is a sine at another pitch, whatever the pieces', () => {
  for (const ratio of [2 ** (1 / 12), 2 ** (-5 / 12), 442 / 440, 2]) {
    const resampler = new Resampler(ratio);
    const pieces = [1000, 4800, 7, 3333].map((length, i, all) => resampler.add(sine(440, length, all.slice(0, i).reduce((a, b) => a + b, 0))));
    const out = pieces.flatMap(piece => [...piece]);
    const expected = sine(440 * ratio, out.length);
    for (let i = 3; i < out.length; i++) assert.ok(Math.abs((out[i] as number) - (expected[i] as number)) < 0.002, `${ratio} ${i}`);
    assert.ok(Math.abs(out.length - 9140 / ratio) < 4);
  }
});

test('the library is as it was when it was changed', () => {
  const code = readFileSync(new URL('../../node_modules/signalsmith-stretch/SignalsmithStretch.mjs', import.meta.url), 'utf8');
  assert.ok(changedCode(code).includes('goesOn'));
  assert.throws(() => changedCode('another version'), /has changed/);
});

test('a source is ready for a range when its pieces have come', async () => {
  const source = new PiecedSource(1, 25, 10, 3);
  let isReady = false;
  const waiting = source.ready({ start: 11, end: 12 }).then(() => { isReady = true; });
  source.add([new Float32Array(1)]);
  await Promise.resolve();
  assert.equal(isReady, false);
  source.add([new Float32Array(1)]);
  await waiting;
  assert.equal(isReady, true);
  const told: number[] = [];
  source.whenRead(index => told.push(index));
  assert.deepEqual(told, [0, 1]);
});

test('who waits for a source that fails is told why', async () => {
  const source = new PiecedSource(1, 25, 10, 3);
  const waiting = source.ready({ start: 0, end: 1 });
  source.fail(new Error('cut short'));
  await assert.rejects(waiting, /cut short/);
});

test('after a page slept, sound comes in where the music is by then', () => {
  const starts: number[][] = [];
  const parameter = { setValueAtTime() {}, linearRampToValueAtTime() {}, cancelScheduledValues() {} };
  const context = {
    currentTime: 100,
    createGain: () => ({ gain: parameter, connect() {}, disconnect() {} }),
    createBuffer: () => ({ copyToChannel() {} }),
    createBufferSource: () => ({ playbackRate: {}, connect() {}, start: (...at: number[]) => { starts.push(at); } }),
  } as unknown as AudioContext;
  const source = new PiecedSource(1, 20, 10, 2);
  source.add([new Float32Array(10 * SampleRate)]);
  source.add([new Float32Array(10 * SampleRate)]);
  const deck = new PlainDeck(context, source, {} as AudioNode);
  // Half as fast, and four seconds late.
  deck.start({ at: 96, from: 3, to: 12, rate: 0.5, pass: 0, isSeamless: false });
  assert.deepEqual(starts, [[100, 5, 5], [110, 0, 2]]);
});
