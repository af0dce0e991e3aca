import { useEffect, useRef } from 'preact/hooks';
import { formWords } from '../neck/roles.tsx';
import { keys } from './keys.ts';
import { usePlayer } from './app.ts';

/** All keys, the signs of the neck, and what the page can be asked to do for everyone. */
export function HelpDialog({ close }: { close: () => void }) {
  const player = usePlayer();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const likes = player.likes.value;
  return (
    <dialog ref={dialog} class="help" aria-labelledby="help-title" onClose={close}>
      <h2 id="help-title">Help and settings</h2>
      <form method="dialog"><button type="submit" class="close">Close</button></form>
      <section>
        <h3>Keys</h3>
        <dl class="keys">{keys.map(key => <div key={key.shown}><dt><kbd>{key.shown}</kbd></dt><dd>{key.words}</dd></div>)}<div><dt><kbd>?</kbd></dt><dd>this list</dd></div></dl>
        <p>Click a note to start there. Click one bar, then another with Shift held, to loop them.</p>
        <label class="tick"><input type="checkbox" checked={likes.keys} onChange={event => player.setLikes({ keys: event.currentTarget.checked })} /> Single letters do these things</label>
      </section>
      <section>
        <h3>On the neck</h3>
        <p>Filled: it sounds now. Outlined: it comes next. Small circles: the scale of the moment. The small figure is the finger, 1 for the index finger, T for the thumb.</p>
        <ul>{Object.entries(formWords).map(([form, words]) => <li key={form}>{words}</li>)}</ul>
        <label class="tick"><input type="checkbox" checked={likes.leftHanded} onChange={event => player.setLikes({ leftHanded: event.currentTarget.checked })} /> Left-handed neck</label>
      </section>
      <section>
        <h3>Look and sound of the page</h3>
        <fieldset>
          <legend>Colours</legend>
          {([['device', 'As the device has it'], ['light', 'Light'], ['dark', 'Dark']] as const).map(([value, words]) => (
            <label key={value} class="tick"><input type="radio" name="theme" checked={likes.theme === value} onChange={() => player.setLikes({ theme: value })} /> {words}</label>
          ))}
        </fieldset>
        <label class="tick"><input type="checkbox" checked={likes.saysBars} onChange={event => player.setLikes({ saysBars: event.currentTarget.checked })} /> Tell a screen reader each bar while it plays</label>
        <label class="tick"><input type="checkbox" checked={likes.follows} onChange={event => player.setLikes({ follows: event.currentTarget.checked })} /> Pages follow the music</label>
        <label class="tick"><input type="checkbox" checked={likes.neckShown} onChange={event => player.setLikes({ neckShown: event.currentTarget.checked })} /> Show the neck</label>
      </section>
      <details>
        <summary>Made with</summary>
        <pre class="licences" tabIndex={0} aria-label="Licences">{(document.getElementById('licences') as HTMLTemplateElement | null)?.content.textContent}</pre>
      </details>
      <p class="quiet">Made by {player.song.madeBy}. This page asks nothing of any network. What it remembers stays on this device.{!player.memory.isKept && ' This browser forbids even that: loops and progress last until the page is closed.'}</p>
    </dialog>
  );
}
