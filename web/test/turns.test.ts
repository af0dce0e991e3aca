import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Call } from '../src/song/song.ts';
import { CalledSource } from '../src/sound/calledSource.ts';
import { PiecedSource, SampleRate } from '../src/sound/source.ts';
import { Form } from '../src/time/form.ts';
import { turnAt, turnFrom, turnsOf } from '../src/time/turns.ts';
import { eightBars } from './song.ts';

const form = new Form(eightBars());
const call: Call = { name: 'way', part: 0, start: 8, notes: [], phrases: [{ kind: 'fixed', of: 'low', first: 4, count: 1 }, { kind: 'free', first: 5, count: 2 }] };

test('the room for an answer is as long as its phrase, in the same bars', () => {
  const { turns } = turnsOf(call, form);
  assert.deepEqual(turns.map(turn => [turn.start, turn.end, turn.phrase, turn.isCall]), [[8, 10, 0, true], [8, 10, 0, false], [10, 14, 1, true], [10, 14, 1, false]]);
});

test('after the last answer comes the first phrase again', () => {
  const turns = turnsOf(call, form);
  assert.equal(turnAt(turns, 4), turns.turns[0]);
  assert.equal(turnAt(turns, 7), turns.turns[3]);
});

test('a place within a phrase begins with its call, any other with the first', () => {
  const turns = turnsOf(call, form);
  assert.deepEqual([8, 9.5, 10, 13, 0, 15].map(song => turnFrom(turns, song)), [0, 0, 2, 2, 0, 0]);
});

test('the called solo stands beside the parts at its own time', async () => {
  const parts = new PiecedSource(1, 3, 1, 3);
  for (let i = 0; i < 3; i++) parts.add([new Float32Array(SampleRate).fill(1)]);
  const solo = new Float32Array(SampleRate).fill(0.5);
  const source = new CalledSource(parts, 1.5, Promise.resolve(solo));
  assert.equal(source.piece(0), null);
  await source.ready({ start: 0, end: 1 });
  assert.equal(source.channels, 2);
  const channel = (piece: number) => source.piece(piece)?.[1] as Float32Array;
  assert.ok(channel(0).every(sample => sample === 0));
  assert.deepEqual([channel(1)[SampleRate / 2 - 1], channel(1)[SampleRate / 2], channel(1)[SampleRate - 1]], [0, 0.5, 0.5]);
  assert.deepEqual([channel(2)[0], channel(2)[SampleRate / 2 - 1], channel(2)[SampleRate / 2]], [0.5, 0.5, 0]);
});
