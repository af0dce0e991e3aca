import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { capoWords } from '../neck/capo.ts';
import { usePlayer } from '../ui/app.ts';
import { signs } from '../words.ts';
import { centsInWords, hertzOf, nearestString } from './cents.ts';
import { listenToMicrophone } from './listening.ts';
import { pluck } from './pluck.ts';

/** Each open string to tune by, and how far off the player's own is. */
export function TuningPanel() {
  const player = usePlayer();
  const part = player.song.parts[player.mine.value];
  const heard = useSignal<{ index: number; cents: number } | null>(null);
  const trouble = useSignal<string | null>(null);
  const isListening = useSignal(false);
  const stop = useRef<(() => void) | null>(null);
  useEffect(() => () => stop.current?.(), []);
  if (!part) return null;
  const { a4 } = player.likes.value;
  const shift = player.kept.value.semitones;

  const play = async (midi: number) => {
    await player.engine.wake();
    const output = player.engine.output;
    if (output) pluck(output.context, output.mixer.click, hertzOf(midi, a4, shift));
  };
  const listen = async () => {
    trouble.value = null;
    const output = player.engine.output;
    if (!output) return;
    try {
      player.stop();
      await player.engine.wake();
      const end = await listenToMicrophone(output.context, hertz => {
        if (hertz !== null) heard.value = nearestString(hertz, part.strings, a4, shift);
      });
      stop.current = () => {
        end();
        stop.current = null;
        isListening.value = false;
        heard.value = null;
      };
      isListening.value = true;
    } catch (error) {
      trouble.value = error instanceof Error ? error.message : String(error);
    }
  };

  return (
    <div class="panel-body">
      <p>{signs(part.title)}, from the low string to the high one{part.capo > 0 ? `, tuned without the capo; then put it at ${capoWords(part)}` : ''}.{shift !== 0 && ' The tones are moved by the semitones set under Sound.'}</p>
      <ul class="rows strings">
        {part.strings.map((string, i) => {
          const isHeard = heard.value?.index === i;
          return (
            <li key={i} class={isHeard ? 'is-heard' : ''}>
              <button type="button" aria-label={`Play string ${part.strings.length - i}, ${string.name}`} onClick={() => void play(string.midi)}>{part.strings.length - i}: {signs(string.name)}</button>
              {isListening.value && <Meter cents={isHeard ? heard.value?.cents ?? null : null} />}
            </li>
          );
        })}
      </ul>
      <div class="line">
        {isListening.value
          ? <button type="button" onClick={() => stop.current?.()}>Stop listening</button>
          : <button type="button" onClick={() => void listen()}>Listen with the microphone</button>}
      </div>
      <p class="quiet">The browser asks first. Nothing is recorded, and nothing leaves this page.</p>
      {trouble.value && <p class="note-box" role="alert">{trouble.value}</p>}
      <p class="quiet">Go up to a pitch slowly and from below, and keep your face away: a string that is tuned higher than it was made for can break. If a string would have to go more than a whole tone above its usual pitch, use a lighter one.</p>
    </div>
  );
}

function Meter({ cents }: { cents: number | null }) {
  if (cents === null) return <span class="quiet">–</span>;
  const shown = Math.min(Math.max(cents, -50), 50);
  return (
    <span class="meter">
      <svg viewBox="0 0 104 16" width={104} height={16} aria-hidden="true">
        <line x1={2} x2={102} y1={8} y2={8} /><line x1={52} x2={52} y1={1} y2={15} /><circle cx={52 + shown} cy={8} r={5} />
      </svg>
      <span>{Math.abs(cents) > 100 ? `${Math.round(Math.abs(cents) / 100)} semitones ${cents < 0 ? 'too low' : 'too high'}` : centsInWords(cents)}</span>
    </span>
  );
}
