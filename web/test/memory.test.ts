import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Memory } from '../src/store/memory.ts';

function storage(): Storage {
  const items = new Map<string, string>();
  return {
    getItem: key => items.get(key) ?? null, setItem: (key, value) => { items.set(key, value); }, removeItem: key => { items.delete(key); },
    clear: () => items.clear(), key: () => null, get length() { return items.size; },
  };
}

test('what is written is read by the next page', () => {
  const device = storage();
  new Memory(() => device).write('a', { speed: 60 });
  assert.deepEqual(new Memory(() => device).read('a', { speed: 100 }), { speed: 60 });
});

test('where storage is forbidden the page still remembers until it is closed', () => {
  const memory = new Memory(() => { throw new DOMException('no', 'SecurityError'); });
  assert.equal(memory.isKept, false);
  memory.write('a', 3);
  assert.equal(memory.read('a', 0), 3);
});

test('a full device is no reason to stop', () => {
  const device = storage();
  const memory = new Memory(() => device);
  device.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };
  memory.write('a', 3);
  assert.equal(memory.read('a', 0), 3);
  assert.equal(memory.isKept, false);
});

test('what is broken or of another kind gives way to the usual', () => {
  const device = storage();
  device.setItem('a', '{broken');
  device.setItem('b', '{"speed":"fast","levels":3}');
  const memory = new Memory(() => device);
  assert.deepEqual(memory.read('a', { speed: 100 }), { speed: 100 });
  assert.deepEqual(memory.read('b', { speed: 100, levels: [1] }), { speed: 100, levels: [1] });
});
