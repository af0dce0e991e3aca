import assert from 'node:assert/strict';
import { test } from 'node:test';
import { clockOf, endOf, placeAt, type Run, speedOfPass } from '../src/time/runs.ts';

const run = (change: Partial<Run>): Run => ({ at: 10, from: 4, to: 8, rate: 0.5, pass: 0, isSeamless: false, ...change });

test('at half speed a run takes twice as long', () => assert.equal(endOf(run({})), 18));

test('the place goes on with the clock, at the run\'s speed', () => {
  assert.equal(placeAt([run({})], 9), 4);
  assert.equal(placeAt([run({})], 12), 5);
  assert.equal(placeAt([run({})], 99), 8);
});

test('a loop\'s second run begins where it begins again', () => {
  const runs = [run({}), run({ at: 18, pass: 1 })];
  assert.equal(placeAt(runs, 17.9999).toFixed(3), '8.000');
  assert.equal(placeAt(runs, 18), 4);
});

test('the clock of a place is the inverse of the place at a clock', () => {
  for (let place = 4; place < 8; place += 0.37) assert.ok(Math.abs(placeAt([run({})], clockOf(run({}), place) as number) - place) < 1e-9);
  assert.equal(clockOf(run({}), 8), null);
  assert.equal(clockOf(run({}), 3.9), null);
});

test('a ramp rises every so many passes and stays at its goal', () => {
  const ramp = { from: 60, to: 75, by: 10, passes: 2 };
  assert.deepEqual([0, 1, 2, 3, 4, 5, 50].map(pass => speedOfPass(ramp, pass)), [60, 60, 70, 70, 75, 75, 75]);
});

test('a ramp may fall too', () => assert.deepEqual([0, 1, 2, 3].map(pass => speedOfPass({ from: 100, to: 85, by: 5, passes: 1 }, pass)), [100, 95, 90, 85]));
