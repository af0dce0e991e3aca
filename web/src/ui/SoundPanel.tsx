import { MostSemitones } from '../store/player.ts';
import { signs } from '../words.ts';
import { usePlayer } from './app.ts';
import { NumberField } from './LoopPanel.tsx';
import { Slider } from './Slider.tsx';

/** What is heard: levels, the player's own part, the click, and the pitch. */
export function SoundPanel() {
  const player = usePlayer();
  const { parts } = player.song;
  const { levels, semitones } = player.kept.value;
  const likes = player.likes.value;
  return (
    <div class="panel-body">
      {parts.length > 1 && (
        <fieldset>
          <legend>My part</legend>
          {parts.map((part, i) => (
            <label key={part.name} class="tick"><input type="radio" name="mine" checked={player.mine.value === i} onChange={() => player.setKept({ mine: i })} /> {signs(part.title)}</label>
          ))}
          <label class="tick"><input type="checkbox" checked={player.kept.value.view === 'all'} onChange={event => player.setKept({ view: event.currentTarget.checked ? 'all' : 'mine' })} /> Show all parts on the pages</label>
        </fieldset>
      )}
      <section>
        <h3>Levels</h3>
        {parts.map((part, i) => (
          <div class="level" key={part.name}>
            <Slider label={signs(part.title)} value={Math.round((levels[i] ?? 1) * 100)} min={0} max={100} text={(levels[i] ?? 1) === 0 ? 'mute' : `${Math.round((levels[i] ?? 1) * 100)} %`} set={value => player.setLevel(i, value / 100)} />
            <button type="button" aria-pressed={(levels[i] ?? 1) === 0} aria-label={`Mute ${part.title}`} onClick={() => player.setLevel(i, (levels[i] ?? 1) === 0 ? 1 : 0)}>Mute</button>
            {parts.length > 1 && <button type="button" aria-pressed={player.alone === i} aria-label={`Only ${part.title}`} onClick={() => player.listenTo(player.alone === i ? null : i)}>Only</button>}
          </div>
        ))}
        <Slider label="Click" value={Math.round(likes.clickVolume * 100)} min={0} max={100} text={`${Math.round(likes.clickVolume * 100)} %`} set={value => player.setLikes({ clickVolume: value / 100 })} />
        <Slider label="All" value={Math.round(likes.volume * 100)} min={0} max={100} text={`${Math.round(likes.volume * 100)} %`} set={value => player.setLikes({ volume: value / 100 })} />
        <p class="quiet">Mind your ears: 85 dBA for 8 hours a day at most, half as long for every 3 dB more (NIOSH). If you must raise your voice to be heard over it, it is too loud for long.</p>
      </section>
      <fieldset>
        <legend>Count before the music</legend>
        {([['never', 'Never'], ['start', 'When it starts'], ['loop', 'Before each time through a loop']] as const).map(([value, words]) => (
          <label key={value} class="tick"><input type="radio" name="count" checked={likes.countIn === value} onChange={() => player.setLikes({ countIn: value })} /> {words}</label>
        ))}
      </fieldset>
      <section>
        <h3>Pitch</h3>
        <div class="line">
          <NumberField label="Semitones up or down" value={semitones} min={-MostSemitones} max={MostSemitones} set={value => player.setKept({ semitones: Math.round(value) })} />
          <NumberField label="A above middle C, Hz" value={likes.a4} min={415} max={466} step={0.5} set={value => player.setLikes({ a4: value })} />
        </div>
        <p class="quiet">For a guitar that stays in another tuning, or an A that is not 440 Hz. The pages keep the song's own frets.</p>
      </section>
    </div>
  );
}
