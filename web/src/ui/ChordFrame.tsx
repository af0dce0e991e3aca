import type { Shape } from '../song/song.ts';
import { signs } from '../words.ts';

/** A shape as strings and frets, low string on the left; words say the same. */
export function ChordFrame({ shape }: { shape: Shape }) {
  const stopped = shape.frets.filter((fret): fret is number => fret !== null && fret > 0);
  const first = stopped.length === 0 || Math.max(...stopped) <= 4 ? 1 : Math.min(...stopped);
  const rows = Math.max(4, ...stopped.map(fret => fret - first + 1));
  const [dx, dy] = [13, 15];
  const width = (shape.frets.length - 1) * dx;
  const words = shape.frets.map((fret, i) => `string ${shape.frets.length - i} ${fret === null ? 'not sounded' : fret === 0 ? 'open' : `fret ${fret}`}`).join(', ');
  return (
    <figure class="frame">
      <figcaption>{signs(shape.symbol ?? shape.name)}</figcaption>
      <svg viewBox={`-22 -16 ${width + 36} ${rows * dy + 22}`} width={width + 36} role="img" aria-label={`${shape.name}: ${words}`}>
        {Array.from({ length: rows + 1 }, (_, i) => <line key={i} class={i === 0 && first === 1 ? 'nut' : 'wire'} x1={0} x2={width} y1={i * dy} y2={i * dy} />)}
        {shape.frets.map((_, i) => <line key={i} class="string" x1={i * dx} x2={i * dx} y1={0} y2={rows * dy} />)}
        {first > 1 && <text x={-6} y={dy * 0.72} text-anchor="end" font-size={11}>{first}</text>}
        {shape.frets.map((fret, i) => fret === null
          ? <text key={i} x={i * dx} y={-4} text-anchor="middle" font-size={11}>×</text>
          : fret === 0
            ? <circle key={i} class="open" cx={i * dx} cy={-8} r={3.6} />
            : <circle key={i} class="held" cx={i * dx} cy={(fret - first + 0.5) * dy} r={5} />)}
      </svg>
    </figure>
  );
}
