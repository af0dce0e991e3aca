import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { Resampler } from '../src/sound/resampler.ts';
import { PiecedSource } from '../src/sound/source.ts';
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
