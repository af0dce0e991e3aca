import { computed, effect, signal, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { readPages } from '../song/blocks.ts';
import type { Pages, View } from '../song/song.ts';
import type { Player } from '../store/player.ts';
import { usePlayer } from '../ui/app.ts';
import { atEachFrame } from '../ui/frames.ts';
import { Cursor } from './cursor.ts';
import { type Line, Places, xOn } from './places.ts';

const narrowScreen = matchMedia('(max-width: 700px)');
const isNarrow = signal(narrowScreen.matches);
narrowScreen.addEventListener('change', () => { isNarrow.value = narrowScreen.matches; });
const lessMotion = matchMedia('(prefers-reduced-motion: reduce)');

/** The engraved pages, with a line that goes through them as they sound. */
export function PagesView() {
  const player = usePlayer();
  const holder = useRef<HTMLDivElement>(null);
  const failure = useSignal<string | null>(null);

  useEffect(() => {
    let shown: ShownPages | null = null;
    let wanted = 0;
    // Much else is kept beside which pages are wanted: they are made anew only when others are wanted.
    const chosen = computed(() => choose(player, isNarrow.value));
    const stopChoosing = effect(() => {
      const view = chosen.value;
      const mine = ++wanted;
      if (!view) {
        failure.value = 'The song could not be put on pages of this width.';
        return;
      }
      readPages(view.id).then(pages => {
        if (mine !== wanted || !holder.current) return;
        shown?.dispose();
        shown = new ShownPages(player, holder.current, view, pages);
        failure.value = null;
      }, (error: unknown) => { failure.value = `The pages can't be shown: ${error instanceof Error ? error.message : String(error)}`; });
    });
    return () => {
      stopChoosing();
      shown?.dispose();
    };
  }, [player]);

  return (
    <main class="music" id="music" tabIndex={0} aria-label="Music">
      {failure.value && <p class="note-box" role="alert">{failure.value}</p>}
      <div ref={holder} />
    </main>
  );
}

function choose(player: Player, narrow: boolean): View | undefined {
  const { views, parts } = player.song;
  const part = parts.length > 1 && player.kept.value.view === 'all' ? undefined : player.mine.value;
  const fitting = views.filter(view => view.narrow === narrow);
  return fitting.find(view => view.part === part) ?? fitting[0] ?? views[0];
}

class ShownPages {
  private readonly places: Places;
  private readonly sheets: HTMLElement[];
  private readonly cursor = new Cursor(mark('cursor'));
  private readonly loopStart = mark('loop-mark loop-start');
  private readonly loopEnd = mark('loop-mark loop-end');
  private readonly stops: (() => void)[] = [];
  private readonly times = new Map<number, number[]>();
  private line: Line | null = null;
  private system = '';
  private barShown: Element | undefined;
  private movedByHand = 0;

  constructor(private readonly player: Player, private readonly holder: HTMLElement, view: View, pages: Pages) {
    // All of it was written by Fretlore's engraver, which escapes every text of the sheet.
    holder.innerHTML = `<style>${pages.style}</style>${pages.glyphs}${pages.pages.map(sheetOf).join('')}`;
    this.sheets = [...holder.querySelectorAll<HTMLElement>('.sheet')];
    const shown = view.part === undefined ? player.song.parts : player.song.parts.filter((_, i) => i === view.part);
    this.places = new Places(player.form, shown, this.sheets.map(sheet => sheet.querySelector('svg') as SVGSVGElement));
    for (const part of shown) {
      for (const note of part.notes) for (const id of [note.id, ...note.held ?? []]) this.times.set(id, [...this.times.get(id) ?? [], note.on]);
    }
    holder.addEventListener('click', this.clicked);
    const scroller = this.scroller;
    const byHand = () => { this.movedByHand = performance.now(); };
    for (const event of ['wheel', 'touchmove'] as const) scroller?.addEventListener(event, byHand, { passive: true });
    this.stops.push(
      atEachFrame(() => this.draw()),
      () => this.cursor.dispose(),
      effect(() => this.drawLoop()),
      () => holder.removeEventListener('click', this.clicked),
      () => { for (const event of ['wheel', 'touchmove'] as const) scroller?.removeEventListener(event, byHand); });
    const observer = new ResizeObserver(() => {
      this.cursor.forget();
      this.lookAgain();
      this.drawLoop();
    });
    observer.observe(holder);
    if (scroller) observer.observe(scroller);
    this.stops.push(() => observer.disconnect());
  }

  dispose(): void { for (const stop of this.stops) stop(); }

  private get scroller(): HTMLElement | null { return this.holder.closest<HTMLElement>('.music'); }

  private readonly clicked = (event: MouseEvent) => {
    const element = event.target as Element;
    const bar = element.closest('g[id^="bar-"]');
    if (!bar) return;
    const written = Number(bar.id.slice(4)) - 1;
    if (event.shiftKey) {
      const near = this.playedNear(written);
      this.player.loopBars(this.player.form.barAt(this.player.place), near);
      return;
    }
    const note = element.closest('g[id^="note-"], g[id^="head-"]');
    const at = note && this.nearest(this.times.get(Number(note.id.slice(5))) ?? []);
    this.player.seek(at ?? this.player.form.startOf(this.playedNear(written)));
  };

  // A bar that is played several times: the time through that is being played.
  private playedNear(written: number): number {
    const { form } = this.player;
    const starts = this.player.song.played.flatMap((bar, index) => bar.bar === written ? [form.startOf(index)] : []);
    return form.barAt(this.nearest(starts) ?? 0);
  }

  private nearest(times: readonly number[]): number | undefined {
    const { loop, place } = this.player;
    const inLoop = loop.value ? times.filter(time => time >= (loop.value?.start ?? 0) - 1e-3 && time < (loop.value?.end ?? 0)) : [];
    return [...inLoop.length > 0 ? inLoop : times].sort((a, b) => Math.abs(a - place) - Math.abs(b - place))[0];
  }

  private draw(): void {
    const { player } = this;
    const [seconds, now] = [player.place, performance.now()];
    const line = this.places.lineAt(seconds);
    if (!line) return;
    if (line !== this.line) {
      this.line = line;
      const group = this.places.groupOf(player.form.bar(player.form.barAt(seconds)).bar);
      if (group !== this.barShown) {
        this.barShown?.classList.remove('bar-now');
        group?.classList.add('bar-now');
        this.barShown = group;
      }
      if (line.system !== this.system) {
        this.system = line.system;
        this.follow(line);
      }
    }
    this.cursor.show(line, seconds, now, player.pace, () => this.put(this.cursor.element, line));
  }

  // What is played may have gone out of sight.
  private lookAgain(): void {
    this.line = null;
    this.system = '';
  }

  private drawLoop(): void {
    const loop = this.player.loop.value;
    if (loop) this.lookAgain();
    for (const [element, at] of [[this.loopStart, loop?.start], [this.loopEnd, loop && loop.end - 1e-3]] as const) {
      const line = at === undefined || at === null ? null : this.places.lineAt(at);
      element.hidden = !line;
      if (!line || typeof at !== 'number') continue;
      const scale = this.put(element, line);
      // The mark stands before the first note, and after the last.
      const x = xOn(line, at) - (element === this.loopStart ? 1.3 : 0);
      element.style.transform = `translate3d(${(x * scale).toFixed(2)}px, ${(line.top * scale).toFixed(1)}px, 0)`;
      element.style.height = `${((line.bottom - line.top) * scale).toFixed(1)}px`;
    }
  }

  // On the sheet that a line stands on; returns the pixels to a unit of it.
  private put(element: HTMLElement, line: Line): number {
    const sheet = this.sheets[line.page];
    if (sheet && element.parentElement !== sheet) sheet.append(element);
    return this.scaleOf(sheet);
  }

  private scaleOf(sheet: HTMLElement | undefined): number {
    const svg = sheet?.firstElementChild as SVGSVGElement | undefined;
    return sheet && svg ? sheet.clientWidth / svg.viewBox.baseVal.width : 1;
  }

  // The system that is played stands in the upper part of the window, unless the player has just looked elsewhere.
  private follow({ page, whole }: Line): void {
    const scroller = this.scroller;
    const sheet = this.sheets[page];
    if (!scroller || !sheet || !this.player.likes.value.follows) return;
    if (this.player.state.value === 'playing' && performance.now() - this.movedByHand < 4000) return;
    const scale = this.scaleOf(sheet);
    const top = sheet.offsetTop + whole.top * scale;
    const bottom = sheet.offsetTop + whole.bottom * scale;
    const room = scroller.clientHeight;
    const fits = bottom - top < room * 0.9;
    const wanted = top - (fits ? Math.min(room * 0.12, room - (bottom - top)) : 8);
    const isSeen = top >= scroller.scrollTop && (fits ? bottom : top + room * 0.5) <= scroller.scrollTop + room * (fits ? 0.8 : 1);
    if (!isSeen) scroller.scrollTo({ top: wanted, behavior: lessMotion.matches ? 'auto' : 'smooth' });
  }
}

// A page that is not in sight is laid out only when it comes, but keeps its room.
function sheetOf(page: string): string {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(page) ?? [];
  return `<div class="sheet" style="aspect-ratio: ${width} / ${height}">${page}</div>`;
}

function mark(name: string): HTMLElement {
  const element = document.createElement('div');
  element.className = name;
  element.setAttribute('aria-hidden', 'true');
  return element;
}
