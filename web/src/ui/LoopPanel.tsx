import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Stretch } from '../song/song.ts';
import { signs } from '../words.ts';
import { usePlayer } from './app.ts';
import { Calls } from './Calls.tsx';

/** What to repeat, how often the speed rises, and the loops that were kept. */
export function LoopPanel() {
  const player = usePlayer();
  const loop = player.loop.value;
  return (
    <div class="panel-body">
      <BarsForm />
      <RampForm />
      {loop && <KeepForm />}
      {player.kept.value.loops.length > 0 && (
        <section>
          <h3>Kept loops</h3>
          <ul class="rows">
            {player.kept.value.loops.map(kept => (
              <li key={kept.name}>
                <button type="button" aria-pressed={loop?.name === kept.name} onClick={() => {
                  player.setSpeed(kept.speed);
                  player.setLoop(kept);
                }}>{signs(kept.name)}</button>
                <span class="quiet">{player.form.wordsOf(kept)}, {kept.speed} %</span>
                <button type="button" class="plain" aria-label={`Forget ${kept.name}`} onClick={() => player.dropLoop(kept.name)}>Forget</button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Stretches kind="section" title="Sections" />
      <Stretches kind="riff" title="Riffs" />
      <Stretches kind="free" title="Free stretches" />
      <Calls calls={player.song.calls} />
    </div>
  );
}

function BarsForm() {
  const player = usePlayer();
  const { form } = player;
  const loop = player.loop.value;
  const [first, last] = loop ? [form.barAt(loop.start), form.barAt(loop.end - 1e-3)] : [player.bar.value, player.bar.value];
  const names = player.song.played.map((bar, i) => `${form.numberOf(i)}${bar.pass > 1 ? ` (time ${bar.pass})` : ''}`);
  const choose = (label: string, value: number, set: (bar: number) => void) => (
    <label>{label} <select value={value} onChange={event => set(Number(event.currentTarget.value))}>{names.map((name, i) => <option key={i} value={i}>{name}</option>)}</select></label>
  );
  return (
    <section>
      <h3>Bars</h3>
      <div class="line">
        {choose('From', first, bar => player.loopBars(bar, Math.max(bar, last)))}
        {choose('to', last, bar => player.loopBars(Math.min(first, bar), bar))}
        {loop && <button type="button" onClick={() => player.setLoop(null)}>Stop looping</button>}
      </div>
      <p class="quiet">Or click a bar of the music, then another one while Shift is held.</p>
    </section>
  );
}

function RampForm() {
  const player = usePlayer();
  const from = useSignal(60);
  const to = useSignal(100);
  const by = useSignal(5);
  const passes = useSignal(2);
  const ramp = player.ramp.value;
  const set = () => { player.ramp.value = { from: from.value, to: to.value, by: Math.max(1, by.value), passes: Math.max(1, passes.value) }; };
  const number = (label: string, value: typeof from, min: number, max: number) => (
    <NumberField label={label} value={value.value} min={min} max={max} set={n => {
      value.value = n;
      if (ramp) set();
    }} />
  );
  return (
    <section>
      <h3>Rising speed</h3>
      <div class="line">
        {number('from %', from, 25, 150)}
        {number('to %', to, 25, 150)}
        {number('by %', by, 1, 50)}
        {number('every so many times', passes, 1, 20)}
        <button type="button" aria-pressed={ramp !== null} disabled={!player.loop.value} onClick={() => ramp ? player.ramp.value = null : set()}>{ramp ? `Rising: ${player.speedNow.value} % now` : 'Rise'}</button>
      </div>
      {!player.loop.value && <p class="quiet">Choose a loop first.</p>}
    </section>
  );
}

export function NumberField({ label, value, min, max, step = 1, set }: { label: string; value: number; min: number; max: number; step?: number; set: (value: number) => void }) {
  const id = useId();
  return (
    <span class="number">
      <label for={id}>{label}</label>
      <input id={id} type="number" inputMode="decimal" value={value} min={min} max={max} step={step} onChange={event => {
        const asked = event.currentTarget.valueAsNumber;
        const fitting = Number.isFinite(asked) ? Math.min(Math.max(asked, min), max) : value;
        event.currentTarget.value = String(fitting);
        set(fitting);
      }} />
    </span>
  );
}

function KeepForm() {
  const player = usePlayer();
  const name = useSignal('');
  const id = useId();
  const loop = player.loop.value;
  if (!loop) return null;
  const given = name.value.trim() || loop.name;
  return (
    <form class="line" onSubmit={event => {
      event.preventDefault();
      player.keepLoop(given);
      name.value = '';
    }}>
      <label for={id}>Keep this loop as</label>
      <input id={id} value={name.value} maxLength={60} placeholder={loop.name} onInput={event => { name.value = event.currentTarget.value; }} />
      <button type="submit">Keep</button>
      {!player.memory.isKept && <p class="quiet">This browser keeps nothing for this page: loops last until it is closed.</p>}
    </form>
  );
}

function Stretches({ kind, title }: { kind: Stretch['kind']; title: string }) {
  const player = usePlayer();
  const { stretches, parts } = player.song;
  const all = stretches.filter(s => s.kind === kind);
  // A riff that comes often is listed once a part, where it comes first.
  const listed = kind === 'section' ? all : all.filter((s, i) => all.findIndex(o => o.name === s.name && o.part === s.part) === i);
  if (listed.length === 0) return null;
  return (
    <section>
      <h3>{title}</h3>
      <ul class="rows">
        {listed.map(stretch => {
          const range = player.form.rangeOf(stretch);
          const isOn = player.loop.value?.start === range.start && player.loop.value.end === range.end;
          return (
            <li key={`${stretch.name} ${stretch.part} ${stretch.first}`}>
              <button type="button" aria-pressed={isOn} onClick={() => isOn ? player.setLoop(null) : player.loopStretch(stretch)}>{signs(stretch.name)}</button>
              <span class="quiet">{player.form.wordsOf(range)}{stretch.part !== undefined && parts.length > 1 ? `, ${signs(parts[stretch.part]?.title ?? '')}` : ''}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
