import { signal, useComputed } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { FreeBar, Note, Part, Scale } from '../song/song.ts';
import { usePlayer } from '../ui/app.ts';
import { atEachFrame } from '../ui/frames.ts';
import { signs } from '../words.ts';
import { atTime, capoWords, highestFret, sounding } from './capo.ts';
import { dotsAt, type Window, windowFor } from './geometry.ts';
import { type Hand, Hands, indexAt } from './moment.ts';
import { RoleMark } from './roles.tsx';

const Row = 30;
const Head = 64;
const FretWidth = 52;
const Top = 20;

/** The neck in the song's tuning: what sounds now and next, with fingers and what each note does. */
export function NeckView() {
  const player = usePlayer();
  const part = player.song.parts[player.mine.value];
  const call = player.turns.value?.call;
  const called = call && player.likes.value.callShown !== 'never' ? call : undefined;
  const hands = useMemo(() => part && new Hands(call ? called?.notes ?? [] : part.notes), [part, call, called]);
  const shown = useMemo(() => signal<{ hand: Hand; chord: number; scale: number; neck: Part | undefined; window: Window }>({
    hand: { now: [], next: [] }, chord: -1, scale: -1, neck: part, window: { first: 1, last: 12 },
  }), [part]);
  const holder = useRef<HTMLDivElement>(null);
  const room = useMemo(() => signal(12), []);

  const free = useComputed(() => {
    const bar = player.bar.value;
    const stretch = player.song.stretches.find(s => s.kind === 'free' && s.part === player.mine.value && bar >= s.first && bar < s.first + s.count);
    const map = stretch && player.song.roadMaps.find(m => m.name === stretch.name && m.part === stretch.part && m.bars.length >= stretch.count);
    const rules = map?.bars[bar - (stretch?.first ?? 0)];
    return rules ? { rules, number: bar - (stretch?.first ?? 0) + 1 } : null;
  });

  useEffect(() => {
    if (!holder.current) return undefined;
    const observer = new ResizeObserver(entries => {
      const width = entries[0]?.contentRect.width ?? 800;
      // Where the drawing may not be as high as it would be, more frets fit beside each other.
      const drawing = holder.current?.firstElementChild;
      const highest = drawing ? Number.parseFloat(getComputedStyle(drawing).maxHeight) : Number.NaN;
      const natural = Top + (part?.strings.length ?? 6) * Row;
      const scale = Number.isFinite(highest) ? Math.min(1, Math.max(0.55, highest / natural)) : 1;
      room.value = Math.max(5, Math.floor((width / scale - Head) / FretWidth));
    });
    observer.observe(holder.current);
    return () => observer.disconnect();
  }, [part]);

  useEffect(() => {
    if (!part || !hands) return undefined;
    let before = '';
    return atEachFrame(() => {
      const seconds = player.place;
      const isShown = player.turn.peek()?.isCall !== false || player.likes.peek().callShown === 'always';
      const hand = isShown ? hands.at(seconds) : nothing;
      const [chord, scale] = [indexAt(part.chords, seconds), indexAt(part.scales, seconds)];
      const neck = atTime(part, seconds);
      const key = [neck.capo, neck.capoStrings, hand.now.map(n => n.id), hand.next.map(n => n.id), chord, scale, room.value, player.bar.value].join('|');
      if (key === before) return;
      before = key;
      const bar = player.form.barAt(seconds);
      const region = free.peek()?.rules;
      const reach = hands.reach(player.form.startOf(bar), player.form.endOf(bar + 1))
        ?? (region?.lowestFret !== undefined ? { low: Math.max(1, region.lowestFret), high: region.highestFret ?? region.lowestFret } : null);
      const old = shown.value.window;
      shown.value = { hand, chord, scale, neck, window: windowFor(reach, old, room.value, highestFret(neck)) };
    });
  }, [part, hands]);

  if (!part) return null;
  const { hand, chord, scale, neck, window } = shown.value;
  const left = player.likes.value.leftHanded;
  const theScale = free.value?.rules.scale ?? player.song.scales[scale];
  return (
    <section class="neck" aria-label={`Neck, ${part.title}`}>
      <p class="neck-words">
        <span class="chord-now">{chord >= 0 ? signs(player.song.chords[chord]?.symbol ?? '') : '–'}</span>
        {theScale && <span class="scale-now">{signs(theScale.name)}</span>}
        {free.value && <FreeWords rules={free.value.rules} bar={free.value.number} />}
        <span class="notes-now">{hand.now.length === 0 ? 'Nothing sounds' : hand.now.map(note => wordsOf(note, player.song.roles[note.role]?.words)).join('; ')}</span>
      </p>
      <div ref={holder} class="neck-drawing">
        <Drawing window={window} part={neck ?? part} left={left}
          hand={hand} scale={theScale} free={free.value?.rules} isAnswer={player.turn.value?.isCall === false} />
      </div>
    </section>
  );
}

const nothing: Hand = { now: [], next: [] };

const wordsOf = (note: Note, role: string | undefined) =>
  `${signs(note.pitch)}, ${signs(role ?? '')}${note.how && note.how !== 'dead' ? `, ${note.how}` : ''}`;

function FreeWords({ rules, bar }: { rules: FreeBar; bar: number }) {
  if (rules.fixed) return <span class="free-now">Bar {bar} of the solo: {signs(rules.fixed)}, as written</span>;
  return <span class="free-now">Bar {bar} of the solo is free. {[...rules.aims.map(aim => aim.words), ...rules.rules].map(signs).join(' ')}</span>;
}

interface DrawingProps {
  readonly window: Window; readonly part: Part; readonly left: boolean;
  readonly hand: Hand; readonly scale: Scale | undefined; readonly free: FreeBar | undefined;
  readonly isAnswer: boolean;
}

function Drawing({ window, part, left, hand, scale, free, isAnswer }: DrawingProps) {
  const player = usePlayer();
  const strings = part.strings.map(s => s.name);
  const count = window.last - window.first + 1;
  const [width, height] = [Head + count * FretWidth + 10, Top + strings.length * Row];
  const x = (fret: number) => {
    const at = fret === 0 ? Head - 22 : Head + (fret - window.first + 0.5) * FretWidth;
    return left ? width - at : at;
  };
  const wire = (fret: number) => left ? width - (Head + (fret - window.first + 1) * FretWidth) : Head + (fret - window.first + 1) * FretWidth;
  // The highest string is on top, as on the page.
  const y = (string: number) => Top + (string - 0.5) * Row;
  const isSeen = (fret: number) => fret === 0 || (fret >= window.first && fret <= window.last);
  // What is fixed is played as written, but in an answer to it.
  const tones = free?.fixed && !isAnswer ? [] : scaleTones(scale, free, part, window);
  const place = (note: Note) => `translate(${x(note.fret)} ${y(note.string)})`;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} style={{ maxWidth: `${width * 1.25}px` }} role="img" aria-label={spoken(hand, player.song.roles.map(r => r.words))}>
      {strings.map((name, i) => {
        const string = strings.length - i;
        return (
          <g key={string}>
            <line class="string" x1={wire(window.first - 1)} x2={wire(window.last)} y1={y(string)} y2={y(string)} stroke-width={0.8 + (strings.length - i) * 0.18} />
            <text class="open-name" x={left ? width - 4 : 4} y={y(string) + 5} text-anchor={left ? 'end' : 'start'} font-size={13}>{signs(name)}</text>
          </g>
        );
      })}
      {Array.from({ length: count + 1 }, (_, i) => window.first - 1 + i).map(fret => (
        <line key={fret} class={fret === 0 ? 'nut' : 'wire'} x1={wire(fret)} x2={wire(fret)} y1={y(1)} y2={y(strings.length)} />
      ))}
      {Array.from({ length: count }, (_, i) => window.first + i).map(fret => (
        <g key={fret}>
          <text class={dotsAt(fret) > 0 ? 'fret-name is-marked' : 'fret-name'} x={x(fret)} y={12} text-anchor="middle" font-size={12}>{fret}</text>
        </g>
      ))}
      {part.capo > 0 && <text class="fret-name" x={left ? width - 4 : 4} y={12} text-anchor={left ? 'end' : 'start'} font-size={11}>capo {part.capo}</text>}
      {part.capoStrings && part.capo >= window.first && part.capo <= window.last
        && <line class="capo" x1={x(part.capo)} x2={x(part.capo)} y1={y(part.capoStrings[1]) - 12} y2={y(part.capoStrings[0]) + 12}><title>Capo at {capoWords(part)}</title></line>}
      {tones.map(tone => (
        <g key={`${tone.string} ${tone.fret}`} class={tone.isAim ? 'tone is-aim' : 'tone'} transform={`translate(${x(tone.fret)} ${y(tone.string)})`}>
          <circle r={9} /><text y={4} text-anchor="middle" font-size={10.5}>{tone.text}</text>
        </g>
      ))}
      {hand.next.filter(note => isSeen(note.fret)).map(note => <g key={`next ${note.id}`} transform={place(note)}><RoleMark role={player.song.roles[note.role]} isNext /></g>)}
      {hand.now.filter(note => isSeen(note.fret)).map(note => <g key={note.id} transform={place(note)}><RoleMark role={player.song.roles[note.role]} finger={note.finger} /></g>)}
    </svg>
  );
}

function scaleTones(scale: Scale | undefined, free: FreeBar | undefined, part: Part, window: Window) {
  const tones: { string: number; fret: number; text: string; isAim: boolean }[] = [];
  if (!scale) return tones;
  const aims = new Set(free?.aims.map(aim => aim.pitchClass));
  part.strings.forEach((_, i) => {
    const string = part.strings.length - i;
    if (string < (free?.highestString ?? 1) || string > (free?.lowestString ?? part.strings.length)) return;
    for (let fret = window.first === 1 ? 0 : window.first; fret <= window.last; fret++) {
      if (fret < (free?.lowestFret ?? 0) || fret > (free?.highestFret ?? fret)) continue;
      const midi = sounding(part, string, fret);
      const tone = scale.tones.find(t => midi !== null && t.pitchClass === midi % 12);
      if (tone) tones.push({ string, fret, text: signs(tone.degree), isAim: aims.has(tone.pitchClass) });
    }
  });
  return tones;
}

function spoken(hand: Hand, roles: readonly string[]): string {
  const say = (note: Note) => `string ${note.string}, ${note.fret === 0 ? 'open' : `fret ${note.fret}`}${note.finger ? `, finger ${note.finger}` : ''}, ${roles[note.role]}`;
  if (hand.now.length > 0) return `Now ${hand.now.map(say).join('; ')}`;
  return hand.next.length > 0 ? `Next ${hand.next.map(say).join('; ')}` : 'Nothing sounds';
}
