import type { Form } from '../time/form.ts';
import { lastAtOrBefore } from '../time/form.ts';
import type { Part } from '../song/song.ts';

/** How high something stands on a page, in the page's own units. */
interface Height { readonly top: number; readonly bottom: number }

/** The way through a played bar: from the top to the bottom of the staves, where each time, which rise, has its x. In the page's own units. */
export interface Line extends Height {
  readonly page: number;
  /** The system that the bar stands in, and its height with all that is written over and under the staves. */
  readonly system: string;
  readonly whole: Height;
  readonly times: readonly number[];
  readonly xs: readonly number[];
}

/** Over and under the staves, what marks a place is this much higher. */
const Over = 0.6;

/** Knows where on the pages each moment of the song stands. Bars are measured when they are first asked for. */
export class Places {
  private readonly groups: { readonly first: number; readonly element: SVGGElement; readonly page: number }[] = [];
  private readonly lines = new Map<number, Line>();
  private readonly systems = new Map<Element, { staves: Height; whole: Height }>();

  constructor(private readonly form: Form, private readonly parts: readonly Part[], pages: readonly SVGSVGElement[]) {
    pages.forEach((svg, page) => {
      for (const element of svg.querySelectorAll<SVGGElement>('g[id^="bar-"]')) this.groups.push({ first: Number(element.id.slice(4)) - 1, element, page });
    });
    this.groups.sort((a, b) => a.first - b.first);
  }

  /** The group of a written bar. */
  groupOf(written: number): SVGGElement | undefined { return this.groupAt(written)?.element; }

  pageOf(written: number): number { return this.groupAt(written)?.page ?? 0; }

  lineAt(seconds: number): Line | null { return this.lineOf(this.form.barAt(seconds)); }

  private groupAt(written: number) { return this.groups.findLast(group => group.first <= written); }

  private lineOf(played: number): Line | null {
    const known = this.lines.get(played);
    if (known) return known;
    const written = this.form.bar(played).bar;
    const group = this.groupAt(written);
    const systemElement = group?.element.closest<SVGGElement>('g[id^="system-"]');
    if (!group || !systemElement) return null;
    const { left, right } = this.extent(group);
    const { staves, whole } = this.heightOf(systemElement);
    const [start, end] = [this.form.startOf(played), this.form.endOf(played)];
    const [times, xs]: [number[], number[]] = [[], []];
    const isStretch = this.isRestOfSeveral(group.first);
    if (!isStretch) {
      for (const { on, x } of this.columns(group.element, start, end)) {
        // Strums and grace notes come a little early: time goes to the right only.
        if (times.length > 0 && (on <= (times.at(-1) as number) + 1e-3 || x <= (xs.at(-1) as number))) continue;
        times.push(on);
        xs.push(x);
      }
    }
    const [from, to] = isStretch ? this.shareOfRest(group.first, written, left, right) : [left, right];
    if (times.length === 0 || (times[0] as number) > start + 1e-3) {
      times.unshift(start);
      xs.unshift(xs.length > 0 ? Math.min(from + 1, xs[0] as number) : from);
    }
    times.push(end);
    xs.push(Math.max(to, xs.at(-1) as number));
    const line = { ...staves, page: group.page, system: `${group.page} ${systemElement.id}`, whole, times, xs };
    this.lines.set(played, line);
    return line;
  }

  private columns(group: SVGGElement, start: number, end: number): { on: number; x: number }[] {
    const columns: { on: number; x: number }[] = [];
    for (const part of this.parts) {
      const notes = part.notes;
      for (let i = firstFrom(notes, start - 0.05); i < notes.length && (notes[i] as { on: number }).on < end - 1e-3; i++) {
        const note = notes[i] as (typeof notes)[number];
        const x = xOf(group, note.id);
        if (x !== null) columns.push({ on: Math.max(note.on, start), x });
      }
    }
    return columns.sort((a, b) => a.on - b.on || a.x - b.x);
  }

  private isRestOfSeveral(first: number): boolean {
    const next = this.groups.find(group => group.first > first);
    return (next?.first ?? this.form.song.bars.length) - first > 1;
  }

  private shareOfRest(first: number, written: number, left: number, right: number): [number, number] {
    const next = this.groups.find(group => group.first > first)?.first ?? this.form.song.bars.length;
    const width = (right - left) / (next - first);
    return [left + (written - first) * width, left + (written - first + 1) * width];
  }

  // Words above a bar may reach over its end: the next bar's start ends it.
  private extent(group: (typeof this.groups)[number]): { left: number; right: number } {
    const box = group.element.getBBox();
    const next = group.element.nextElementSibling;
    const right = next?.id.startsWith('bar-') ? (next as SVGGElement).getBBox().x : box.x + box.width;
    return { left: box.x, right: Math.max(box.x + 1, Math.min(right, box.x + box.width)) };
  }

  private heightOf(system: SVGGElement): { staves: Height; whole: Height } {
    const known = this.systems.get(system);
    if (known) return known;
    const whole = heightOf(system);
    // The staves' lines are drawn before the first bar.
    const before: Height[] = [];
    for (const child of system.children) {
      if (child.id.startsWith('bar-')) break;
      if (child.tagName === 'path') before.push(heightOf(child as SVGPathElement));
    }
    const [top, bottom] = [Math.min(...before.map(path => path.top)) - Over, Math.max(...before.map(path => path.bottom)) + Over];
    const heights = { staves: before.length > 0 ? { top: Math.max(whole.top, top), bottom: Math.min(whole.bottom, bottom) } : whole, whole };
    this.systems.set(system, heights);
    return heights;
  }
}

function heightOf(element: SVGGraphicsElement): Height {
  const { y, height } = element.getBBox();
  return { top: y, bottom: y + height };
}

/** Where a time stands on its line. */
export function xOn({ times, xs }: Line, seconds: number): number {
  const i = Math.min(Math.max(0, lastAtOrBefore(times, seconds)), times.length - 2);
  const [t0, t1, x0, x1] = [times[i] as number, times[i + 1] as number, xs[i] as number, xs[i + 1] as number];
  const share = t1 > t0 ? Math.min(Math.max((seconds - t0) / (t1 - t0), 0), 1) : 0;
  return x0 + share * (x1 - x0);
}

/** The middle of a note's number, or of its head where there is no tablature; null when it is not in the group. */
function xOf(group: SVGGElement, id: number): number | null {
  const number = group.querySelector(`#note-${id} > text`);
  if (number) return Number(number.getAttribute('x'));
  const head = group.querySelector(`#head-${id} > use`);
  const x = head?.getAttribute('x');
  return x ? Number(x) + 0.6 : null;
}

function firstFrom(notes: readonly { on: number }[], seconds: number): number {
  let [low, high] = [0, notes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((notes[middle] as { on: number }).on < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}
