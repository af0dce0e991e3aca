import type { Song } from '../src/song/song.ts';

/** Eight bars of 4/4 at 120 quarters a minute: two seconds each, the first two played twice. */
export function eightBars(): Song {
  const order = [0, 1, 0, 1, 2, 3, 4, 5];
  return {
    format: 1, id: 'test', title: 'Test', key: 'A minor', madeBy: 'test', seconds: 16,
    bars: [0, 1, 2, 3, 4, 5].map(i => ({ number: i + 1, pickup: false, meter: '4/4' })),
    played: order.map((bar, i) => ({
      bar, pass: i === 2 || i === 3 ? 2 : 1, start: i * 2, quarters: 120, beats: [0, 0.5, 1, 1.5].map(b => i * 2 + b), count: [0.5, 0.5, 0.5, 0.5],
    })),
    stretches: [
      { kind: 'section', name: 'Verse', first: 0, count: 4 }, { kind: 'section', name: 'Close', first: 4, count: 4 },
      { kind: 'riff', name: 'low', part: 0, first: 0, count: 2 }, { kind: 'riff', name: 'low', part: 1, first: 4, count: 2 },
    ],
    parts: [], roles: [], chords: [], scales: [], shapes: [], steps: [], roadMaps: [], calls: [], recordings: [], sound: { seconds: 17, pieceSeconds: 10, pieces: 2 }, views: [],
  };
}
