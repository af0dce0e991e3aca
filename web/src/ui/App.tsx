import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { NeckView } from '../neck/NeckView.tsx';
import { PagesView } from '../pages/PagesView.tsx';
import type { Player } from '../store/player.ts';
import { TakePanel } from '../take/TakePanel.tsx';
import { TuningPanel } from '../tuner/TuningPanel.tsx';
import { signs } from '../words.ts';
import { WithPlayer } from './app.ts';
import { TurnBanner } from './Calls.tsx';
import { HelpDialog } from './HelpDialog.tsx';
import { listen } from './keys.ts';
import { LessonPanel } from './LessonPanel.tsx';
import { LoopPanel } from './LoopPanel.tsx';
import { SoundPanel } from './SoundPanel.tsx';
import { TransportBar } from './TransportBar.tsx';

const panels = [
  { id: 'lesson', title: 'Lesson', Body: LessonPanel }, { id: 'loops', title: 'Loops', Body: LoopPanel }, { id: 'sound', title: 'Sound', Body: SoundPanel },
  { id: 'tuning', title: 'Tuning', Body: TuningPanel }, { id: 'take', title: 'Recording', Body: TakePanel },
] as const;

export function App({ player }: { player: Player }) {
  const wide = matchMedia('(min-width: 1000px)').matches;
  const panel = useSignal<string | null>(wide ? 'lesson' : null);
  const helps = useSignal(false);
  useEffect(() => listen(player, () => { helps.value = true; }), [player]);
  useEffect(() => keepDrops(() => {
    panel.value = 'take';
    player.say('Recording: drop the file into the field here.');
  }), [player]);
  const theme = player.likes.value.theme;
  useEffect(() => {
    if (theme === 'device') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
  const isPlaying = player.state.value !== 'stopped';
  // On a phone a panel stands where the neck is.
  useEffect(() => { if (isPlaying && matchMedia('(max-width: 700px)').matches) panel.value = null; }, [isPlaying]);
  const shown = panels.find(p => p.id === panel.value);
  return (
    <WithPlayer value={player}>
      <div class={shown ? 'desk has-panel' : 'desk'}>
        <a class="skip" href="#music">To the music</a>
        <header class="top">
          <h1>{player.song.title}</h1>
          <p>{[player.song.artist, signs(player.song.key)].filter(Boolean).join(' · ')}</p>
          <button type="button" class="help-button" aria-label="Help and settings" title="Help and settings (?)" onClick={() => { helps.value = true; }}>?</button>
        </header>
        <PagesView />
        <nav class="tabs" aria-label="Panels">
          {panels.map(p => (
            <button type="button" key={p.id} aria-expanded={panel.value === p.id} aria-controls="panel" onClick={() => { panel.value = panel.value === p.id ? null : p.id; }}>{p.title}</button>
          ))}
        </nav>
        <aside class="panel" id="panel" aria-label={shown?.title ?? 'Panel'} hidden={!shown}>{shown && <><h2>{shown.title}</h2><shown.Body /></>}</aside>
        <footer class="dock">
          {player.trouble.value && (
            <div class="note-box" role="alert"><p>{player.trouble.value}</p><button type="button" class="round" aria-label="Put away" title="Put away" onClick={() => { player.trouble.value = null; }}>×</button></div>
          )}
          <TurnBanner />
          {player.likes.value.neckShown && <NeckView />}
          <TransportBar />
        </footer>
        <p class="said" role="status" aria-live="polite">{player.said.value}</p>
        {helps.value && <HelpDialog close={() => { helps.value = false; }} />}
      </div>
    </WithPlayer>
  );
}

// A file that is dropped beside its field would take the place of the page. Returns a way to stop.
function keepDrops(beside: () => void): () => void {
  const over = (event: DragEvent) => event.preventDefault();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    if (!(event.target as Element).closest('.drop')) beside();
  };
  addEventListener('dragover', over);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('drop', drop);
  };
}
