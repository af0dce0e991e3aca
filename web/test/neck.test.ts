import assert from 'node:assert/strict';
import { test } from 'node:test';
import { atTime, capoWords, highestFret, sounding } from '../src/neck/capo.ts';
import { dotsAt, windowFor } from '../src/neck/geometry.ts';
import { Hands, indexAt } from '../src/neck/moment.ts';
import { formOf } from '../src/neck/roles.tsx';
import type { Note, Part } from '../src/song/song.ts';

const note = (id: number, on: number, off: number, fret: number): Note => ({ id, on, off, string: 1, fret, pitch: 'E4', midi: 64, role: 0 });
const part: Part = {
  name: 'p', title: 'P', strings: [], capo: 0, frets: 24, aside: 0, chords: [], scales: [], notes: [note(1, 0, 2, 3), note(2, 1, 2, 5), note(3, 1.01, 2, 7), note(4, 3, 4, 0)],
};

test('notes sound from their onset up to their end', () => {
  const hands = new Hands(part.notes);
  assert.deepEqual(hands.at(0.5).now.map(n => n.id), [1]);
  assert.deepEqual(hands.at(1.5).now.map(n => n.id), [1, 2, 3]);
  assert.deepEqual(hands.at(2.5).now, []);
});

test('what is struck together comes next together', () => {
  assert.deepEqual(new Hands(part.notes).at(0.5).next.map(n => n.id), [2, 3]);
  assert.deepEqual(new Hands(part.notes).at(3.5).next, []);
});

test('open strings don\'t count for where the hand is', () => {
  assert.deepEqual(new Hands(part.notes).reach(0, 2), { low: 3, high: 7 });
  assert.equal(new Hands(part.notes).reach(3, 4), null);
});

test('the frets shown hold what is played and move no more than they must', () => {
  for (let low = 1; low < 20; low++) {
    for (let high = low; high < Math.min(low + 7, 24); high++) {
      const window = windowFor({ low, high }, null, 8, 24);
      assert.ok(window.first <= low && window.last >= high && window.first >= 1 && window.last <= 24 && window.last - window.first === 7, `${low} ${high}`);
      assert.equal(windowFor({ low, high }, window, 8, 24), window);
    }
  }
});

test('a wider stretch than there is room for is shown whole', () => {
  const window = windowFor({ low: 2, high: 15 }, null, 8, 24);
  assert.ok(window.first <= 2 && window.last >= 15);
});

test('dots are where necks have them (common practice)', () => {
  assert.deepEqual([3, 5, 7, 9, 15, 17, 19, 21].map(dotsAt), Array(8).fill(1));
  assert.deepEqual([12, 24].map(dotsAt), [2, 2]);
  assert.equal(dotsAt(0), 0);
});

test('a degree has one shape, whatever its sign', () => {
  const of = (degree: string, kind: 'chord' | 'outside' | 'dead' = 'chord') => formOf({ degree, words: '', kind });
  assert.deepEqual(['1', 'b3', '3', 'b5', '5', '#5', 'b7', '7', '9', '4'].map(degree => of(degree)),
    ['root', 'third', 'third', 'fifth', 'fifth', 'fifth', 'seventh', 'seventh', 'other', 'other']);
  assert.equal(of('3', 'outside'), 'outside');
  assert.equal(of('', 'dead'), 'dead');
});

test('a chord is in force until the next', () => {
  const moments = [{ at: 1, index: 7 }, { at: 3, index: -1 }];
  assert.deepEqual([0, 1, 2.9, 3].map(seconds => indexAt(moments, seconds)), [-1, 7, 7, -1]);
});

test('frets count from a capo over all strings, and from the nut under one over some', () => {
  const strings = [40, 45, 50, 55, 59, 64].map(midi => ({ name: '', midi }));
  const [none, all, some] = [{ strings, capo: 0, frets: 24 }, { strings, capo: 2, frets: 24 }, { strings, capo: 2, frets: 24, capoStrings: [5, 3] as const }];
  assert.deepEqual([6, 4].map(s => sounding(none, s, 3)), [43, 53]);
  assert.deepEqual([6, 4].map(s => sounding(all, s, 3)), [45, 55]);
  assert.deepEqual([0, 1, 2, 3].map(f => sounding(some, 4, f)), [52, null, null, 53]);
  assert.deepEqual([0, 1, 2].map(f => sounding(some, 6, f)), [40, 41, 42]);
  assert.deepEqual([none, all, some].map(highestFret), [24, 22, 24]);
  assert.deepEqual([none, all, some].map(capoWords), ['', 'fret 2', 'fret 2 on strings 5–3']);
});

test('the neck has the capo of the moment', () => {
  const moving: Part = { ...part, capo: 2, capoStrings: [5, 3], capos: [{ at: 4, fret: 3 }, { at: 8, fret: 0 }] };
  assert.deepEqual([0, 4, 9].map(seconds => capoWords(atTime(moving, seconds))), ['fret 2 on strings 5–3', 'fret 3', '']);
  assert.equal(atTime(part, 5), part);
});
