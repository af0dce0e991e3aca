import type { Role } from '../song/song.ts';
import { signs } from '../words.ts';

/** How a note is drawn: by shape and text first, by colour second. */
export type Form = 'root' | 'third' | 'fifth' | 'seventh' | 'other' | 'outside' | 'dead';

export function formOf(role: Role | undefined): Form {
  if (!role || role.kind === 'dead') return 'dead';
  if (role.kind === 'outside') return 'outside';
  switch (role.degree.replace(/[^0-9]/g, '')) {
    case '1': case '8': return 'root';
    case '3': case '10': return 'third';
    case '5': case '12': return 'fifth';
    case '7': return 'seventh';
    default: return 'other';
  }
}

export const formWords: Record<Form, string> = {
  root: 'root: square', third: 'third: triangle', fifth: 'fifth: diamond', seventh: 'seventh: six-sided', other: 'another degree: circle',
  outside: 'outside chord and key: broken circle', dead: 'dead note: cross',
};

const outlines: Record<Exclude<Form, 'other' | 'outside' | 'dead'>, string> = {
  root: 'M-11-11H11V11H-11Z',
  third: 'M0-15L15 11H-15Z',
  fifth: 'M0-15L15 0L0 15L-15 0Z',
  seventh: 'M-7-12.5H7L14 0L7 12.5H-7L-14 0Z',
};

/** The outline of a role around its own middle, with the degree in it. */
export function RoleMark({ role, isNext = false, finger }: { role: Role | undefined; isNext?: boolean; finger?: string | undefined }) {
  const form = formOf(role);
  const text = form === 'dead' ? '×' : signs(role?.degree ?? '');
  return (
    <g class={`role role-${form}${isNext ? ' is-next' : ''}`}>
      {form === 'other' || form === 'outside' || form === 'dead' ? <circle r={12.5} /> : <path d={outlines[form]} />}
      <text y={form === 'third' ? 8 : 5} text-anchor="middle" font-size={text.length > 2 ? 11 : 13}>{text}</text>
      {finger && !isNext && <g class="finger"><circle cx={15} cy={-12} r={7.5} /><text x={15} y={-8} text-anchor="middle" font-size={11}>{finger}</text></g>}
    </g>
  );
}
