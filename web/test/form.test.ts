import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Form, lastAtOrBefore } from '../src/time/form.ts';
import { clock, signs } from '../src/words.ts';
import { eightBars } from './song.ts';

const form = new Form(eightBars());

test('a bar begins at its first instant and lasts to the next', () => {
  assert.equal(form.barAt(0), 0);
  assert.equal(form.barAt(1.999), 0);
  assert.equal(form.barAt(2), 1);
  assert.equal(form.barAt(99), 7);
  assert.equal(form.barAt(-1), 0);
  assert.equal(form.endOf(7), 16);
});

test('a place is said with bar, beat, time through and section', () => {
  assert.equal(form.whereabouts(2.6), 'Bar 2, beat 2, Verse');
  assert.equal(form.whereabouts(4, false), 'Bar 1, time 2, Verse');
});

test('a range is said in printed numbers', () => {
  assert.equal(form.wordsOf({ start: 8, end: 12 }), 'bars 3 to 4');
  assert.equal(form.wordsOf({ start: 2, end: 4 }), 'bar 2');
});

test('bars given the wrong way round are the same range', () => assert.deepEqual(form.rangeOfBars(3, 1), form.rangeOfBars(1, 3)));

test('of riffs with one name the own part\'s is found', () => {
  assert.equal(form.find('low', 1)?.first, 4);
  assert.equal(form.find('low')?.first, 0);
  assert.equal(form.find('none'), undefined);
});

test('the last number not after a value is found as by looking at each', () => {
  const numbers = [0, 1, 1, 4, 9];
  for (let value = -1; value < 11; value += 0.5) assert.equal(lastAtOrBefore(numbers, value), numbers.findLastIndex(n => n <= value));
});

test('flats and sharps are set in names and degrees, not in words', () => {
  assert.equal(signs('Bb3 and F#m11, b7, bb7, #4'), 'B♭3 and F♯m11, ♭7, ♭♭7, ♯4');
  assert.equal(signs('Bm7b5/A'), 'Bm7♭5/A');
  assert.equal(signs('bed, Abba, bass'), 'bed, Abba, bass');
});

test('time is read as on a clock', () => assert.deepEqual([clock(0), clock(59.9), clock(61), clock(-3)], ['0:00', '0:59', '1:01', '0:00']));
