import { useSignal } from '@preact/signals';
import { useEffect, useId } from 'preact/hooks';
import type { Source } from '../sound/source.ts';
import { fromTaps, Sync, type SyncPoint } from '../time/sync.ts';
import { usePlayer } from '../ui/app.ts';
import { counted, signs } from '../words.ts';
import { keyOf, readTake, recordingOf } from './take.ts';

/** The player's own recording: added, lined up by taps, and then played like the song's own sound. */
export function TakePanel() {
  const player = usePlayer();
  const trouble = useSignal<string | null>(null);
  const reading = useSignal(false);
  const id = useId();
  const open = player.recording.value;

  const add = async (file: File | undefined) => {
    if (!file || reading.value) return;
    reading.value = true;
    trouble.value = null;
    try {
      player.stop();
      const source = await readTake(file);
      player.recording.value = { name: file.name, key: keyOf(file), source };
      player.playTake(player.kept.value.takes[keyOf(file)] ?? recordingOf(player.song.recordings, file.name)?.points ?? []);
    } catch (error) {
      trouble.value = error instanceof Error ? error.message : String(error);
    } finally {
      reading.value = false;
    }
  };

  return (
    <div class="panel-body">
      <p>Play along with a real recording: add an audio file, tap the first beat of some bars, and speed, loops and cursor work on it. The file stays in this page; it is to be added again next time, the taps are kept.</p>
      {player.song.recordings.length > 0 && <p>Lined up already, no tapping needed: {player.song.recordings.map((recording, i) => <span key={recording.name}>{i > 0 && ', '}<b>{recording.name}</b></span>)}.</p>}
      <div class="drop" onDragOver={event => event.preventDefault()} onDrop={event => {
        event.preventDefault();
        void add(event.dataTransfer?.files[0]);
      }}>
        <label for={id}>Audio file</label>
        <input id={id} type="file" accept="audio/*,video/mp4,.opus,.ogg,.flac" onChange={event => void add(event.currentTarget.files?.[0])} />
        <p class="quiet">{reading.value ? 'Reading it …' : 'Or drop one here.'}</p>
      </div>
      {trouble.value && <p class="note-box" role="alert">{trouble.value}</p>}
      {open && <Opened name={open.name} source={open.source} fileKey={open.key} />}
    </div>
  );
}

function Opened({ name, source, fileKey }: { name: string; source: Source; fileKey: string }) {
  const player = usePlayer();
  const taps = useSignal<number[]>([]);
  const tapping = useSignal(false);
  const first = useSignal(0);
  const tapped = player.kept.value.takes[fileKey];
  const sheets = recordingOf(player.song.recordings, name);
  const points: readonly SyncPoint[] = tapped ?? sheets?.points ?? [];
  const byTaps = tapped && !player.song.recordings.some(recording => JSON.stringify(recording.points) === JSON.stringify(tapped));
  const isOn = player.take.value !== null;

  const start = () => {
    taps.value = [];
    tapping.value = true;
    player.setLoop(null, false);
    player.setSpeed(100);
    player.playTake([]);
    player.seek(0);
    if (player.state.value === 'stopped') player.toggle();
  };
  const tap = () => { if (tapping.value && player.state.value === 'playing') taps.value = [...taps.value, player.place]; };
  const done = () => {
    player.stop();
    tapping.value = false;
    const made = fromTaps(taps.value, player.song.played.map(bar => bar.start), first.value);
    lineUp(made);
  };
  const lineUp = (made: readonly SyncPoint[] | undefined) => {
    const { [fileKey]: _, ...others } = player.kept.value.takes;
    player.setKept({ takes: made ? { ...others, [fileKey]: [...made] } : others });
    player.playTake(made ?? sheets?.points ?? []);
  };
  const last = points.at(-1);
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => { if (event.key.toLowerCase() === 't' && !event.repeat && tapping.value) tap(); };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, []);

  return (
    <section>
      <h3>{name}</h3>
      <label class="tick"><input type="checkbox" checked={isOn} onChange={event => event.currentTarget.checked ? player.playTake(points) : player.playStems()} /> Play this in place of the page's own sound</label>
      <p>{points.length === 0 ? 'Not lined up yet: it is taken to start with the song and to keep its tempo.' : `Lined up ${byTaps ? 'by your taps' : 'by the teacher'} at ${counted(points.length, 'bar')}${points.length > 1 ? `, at ${tempoOf(points)} % of the song's tempo on the whole` : ''}.`}</p>
      {last && last.take > source.seconds && <p class="note-box" role="status">Its end comes before the last bar that was lined up: this may be another recording, or a part of it. Tap it anew if the cursor goes astray.</p>}
      {byTaps && sheets && <p><button type="button" onClick={() => lineUp(undefined)}>Line it up as the teacher did instead</button></p>}
      {!sheets && player.song.recordings.map(recording => (
        <p key={recording.name}><button type="button" onClick={() => lineUp(recording.points)}>This is {recording.name}: line it up as the teacher did</button></p>
      ))}
      <div class="line">
        <label>First tap is bar <select value={first.value} disabled={tapping.value} onChange={event => { first.value = Number(event.currentTarget.value); }}>
          {player.song.played.map((_, i) => <option key={i} value={i}>{signs(String(player.form.numberOf(i)))}{player.form.bar(i).pass > 1 ? ` (time ${player.form.bar(i).pass})` : ''}</option>)}
        </select></label>
        {!tapping.value && <button type="button" onClick={start}>Start tapping</button>}
        {tapping.value && <button type="button" class="tap" onClick={tap}>Tap (T): {taps.value.length}</button>}
        {tapping.value && <button type="button" disabled={taps.value.length === 0} onClick={() => { taps.value = taps.value.slice(0, -1); }}>Take the last back</button>}
        {tapping.value && <button type="button" disabled={taps.value.length === 0} onClick={done}>Use the taps</button>}
      </div>
      <p class="quiet">The recording plays from its start. Tap at the first beat of each bar, from the bar chosen on; two bars are enough where the tempo is steady, more are better.</p>
      <p class="quiet">Its length is {Math.round(source.seconds)} s.</p>
    </section>
  );
}

function tempoOf(points: readonly SyncPoint[]): number {
  const sync = new Sync(points);
  const [a, b] = [sync.points[0], sync.points.at(-1)];
  return a && b && b.take > a.take ? Math.round(100 * (b.song - a.song) / (b.take - a.take)) : 100;
}
