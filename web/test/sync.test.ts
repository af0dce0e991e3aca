import assert from 'node:assert/strict';
import { test } from 'node:test';
import { recordingOf } from '../src/take/take.ts';
import { fromTaps, Sync } from '../src/time/sync.ts';

test('a file is known by its name, whatever it was made into', () => {
  const recordings = [{ name: 'Kitchen take 2.wav' }, { name: 'Live.flac' }];
  assert.equal(recordingOf(recordings, 'kitchen take 2.mp3'), recordings[0]);
  assert.equal(recordingOf(recordings, 'Live.flac'), recordings[1]);
  assert.equal(recordingOf(recordings, 'Live 2.flac'), undefined);
});

test('without a point a recording runs with the song', () => assert.equal(new Sync([]).toTake(3), 3));

test('with one point it is late by a fixed time', () => {
  const sync = new Sync([{ song: 2, take: 5 }]);
  assert.equal(sync.toTake(4), 7);
  assert.equal(sync.toSong(7), 4);
});

test('between points it goes in straight lines, and beyond them on as it went', () => {
  const sync = new Sync([{ song: 0, take: 1 }, { song: 2, take: 3 }, { song: 4, take: 7 }]);
  assert.equal(sync.toTake(1), 2);
  assert.equal(sync.toTake(3), 5);
  assert.equal(sync.toTake(5), 9);
  assert.equal(sync.toTake(-1), 0);
});

test('there and back is the same place', () => {
  const sync = new Sync([{ song: 0, take: 1.3 }, { song: 2, take: 3.1 }, { song: 4, take: 7.7 }]);
  for (let song = -2; song < 8; song += 0.31) assert.ok(Math.abs(sync.toSong(sync.toTake(song)) - song) < 1e-9);
});

test('taps that go back are left out', () => {
  const sync = new Sync(fromTaps([1, 3, 2.5, 6], [0, 2, 4, 6], 0));
  assert.deepEqual(sync.points, [{ song: 0, take: 1 }, { song: 2, take: 3 }, { song: 6, take: 6 }]);
});

test('taps beyond the last bar are dropped', () => assert.equal(fromTaps([1, 2, 3], [0, 2], 1).length, 1));
