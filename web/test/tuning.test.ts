import assert from 'node:assert/strict';
import { test } from 'node:test';
import { centsInWords, hertzOf, nearestString } from '../src/tuner/cents.ts';

const strings = [{ name: 'E2', midi: 40 }, { name: 'A2', midi: 45 }, { name: 'E4', midi: 64 }];

test('A above middle C has the frequency it is set to', () => {
  assert.equal(hertzOf(69, 440), 440);
  assert.equal(hertzOf(57, 442), 221);
  // ISO 16 and equal temperament: low E at 82.41 Hz.
  assert.ok(Math.abs(hertzOf(40, 440) - 82.41) < 0.005);
});

test('a tone belongs to the string it is nearest to', () => {
  assert.deepEqual(nearestString(110, strings, 440), { index: 1, cents: 0 });
  const flat = nearestString(82.41 * 2 ** (-20 / 1200), strings, 440);
  assert.equal(flat?.index, 0);
  assert.ok(Math.abs((flat?.cents ?? 0) + 20) < 0.1);
});

test('a shift moves what is in tune', () => assert.equal(Math.round(nearestString(hertzOf(47, 440), strings, 440, 2)?.cents ?? 99), 0));

test('cents are said with what to do', () => assert.deepEqual([centsInWords(2), centsInWords(-12.4), centsInWords(30)], ['in tune', '12 cents flat: tune up', '30 cents sharp: tune down']));
