import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { FastestSpeed, SlowestSpeed } from '../store/player.ts';
import { clock, signs } from '../words.ts';
import { usePlayer } from './app.ts';
import { Icon } from './Icon.tsx';
import { Slider } from './Slider.tsx';

/** Play, where it is, how fast, and what is heard: always at hand. */
export function TransportBar() {
  const player = usePlayer();
  const playing = player.state.value !== 'stopped';
  const loop = player.loop.value;
  const speed = player.kept.value.speed;
  const part = player.song.parts[player.mine.value];
  return (
    <section class="transport" aria-label="Playing">
      <div class="transport-row">
        <button type="button" class="round" aria-label="To the start" title="To the start (Home)" onClick={() => player.toStart()}><Icon name="start" /></button>
        <button type="button" class="round" aria-label="A bar back" title="A bar back (←)" onClick={() => player.move(-1)}><Icon name="back" /></button>
        <button type="button" class="round play" aria-label={playing ? 'Stop' : 'Play'} title={`${playing ? 'Stop' : 'Play'} (space)`} data-state={player.state.value}
          onClick={() => player.toggle()}><Icon name={playing ? 'stop' : 'play'} /></button>
        <button type="button" class="round" aria-label="A bar on" title="A bar on (→)" onClick={() => player.move(1)}><Icon name="on" /></button>
        <Where />
      </div>
      <div class="transport-row speed">
        <Slider label="Speed" value={player.ramp.value ? player.speedNow.value : speed} min={SlowestSpeed} max={FastestSpeed} text={`${player.ramp.value ? player.speedNow.value : speed} %`}
          set={value => player.setSpeed(value)} />
        <div class="presets of-speed" role="group" aria-label="Speeds">
          {[50, 75, 100].map(percent => (
            <button type="button" key={percent} aria-pressed={speed === percent && !player.ramp.value} onClick={() => player.setSpeed(percent)}>{percent}</button>
          ))}
        </div>
      </div>
      <div class="transport-row switches">
        {part && <button type="button" aria-pressed={player.withoutMine.value} title={`Leave out ${part.title} (M)`} onClick={() => player.toggleMine()}>Without me</button>}
        <button type="button" aria-pressed={loop !== null} title="Loop this bar, or stop looping (L)"
          onClick={() => loop ? player.setLoop(null) : player.loopBars(player.bar.value, player.bar.value)}>Loop{loop && <span class="on-wide">: {signs(loop.name)}</span>}</button>
        <button type="button" aria-pressed={player.likes.value.click} title="Click on each beat (K)" onClick={() => player.setLikes({ click: !player.likes.value.click })}>Click</button>
        <button type="button" aria-pressed={player.likes.value.countIn !== 'never'} title="Count before the music (C)"
          onClick={() => player.setLikes({ countIn: player.likes.value.countIn === 'never' ? 'start' : 'never' })}>Count-in</button>
      </div>
    </section>
  );
}

function Where() {
  const player = usePlayer();
  const seconds = useSignal(0);
  useEffect(() => {
    const timer = setInterval(() => { seconds.value = Math.floor(player.place); }, 200);
    return () => clearInterval(timer);
  }, [player]);
  return (
    <p class="where">
      <strong>{player.counting.value ? 'Counting in' : signs(player.form.whereabouts(player.form.startOf(player.bar.value), false))}</strong>
      <span class="time">{player.loop.value && player.state.value === 'playing' ? `pass ${player.passes.value + 1}, ` : ''}{clock(seconds.value)} of {clock(player.song.seconds)}</span>
    </p>
  );
}
