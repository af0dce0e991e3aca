import type { Likes } from '../store/kept.ts';
import type { Call, Phrase } from '../song/song.ts';
import { counted, signs } from '../words.ts';
import { usePlayer } from './app.ts';

/** What a phrase is, in words. */
function phraseWords({ kind, of }: Phrase): string {
  switch (kind) {
    case 'fixed': return `${of ?? ''}, as written`;
    case 'lick': return `from the lick ${of ?? ''}`;
    case 'answer': return 'the phrase before, to another end';
    case 'sequence': return 'the phrase before, higher or lower';
    default: return 'by the rules';
  }
}

/** Call and response in free stretches: on and off, and each phrase to begin with. */
export function Calls({ calls }: { calls: readonly Call[] }) {
  const player = usePlayer();
  const turns = player.turns.value;
  if (calls.length === 0) return null;
  const choose = (value: Likes['callShown'], words: string) => (
    <label class="tick"><input type="radio" name="call-shown" checked={player.likes.value.callShown === value} onChange={() => player.setLikes({ callShown: value })} /> {words}</label>
  );
  return (
    <section>
      <h3>Call and response</h3>
      <p class="quiet">The page plays a phrase over the other parts, then the same bars without it: play it back, vary it, or answer with your own. Then comes the next phrase.</p>
      {calls.map(call => {
        const isOn = turns?.call === call;
        return (
          <div key={`${call.name} ${call.part}`}>
            <button type="button" aria-pressed={isOn} onClick={() => player.callPhrases(isOn ? null : call)}>{signs(call.name)}: {counted(call.phrases.length, 'phrase')}</button>
            {isOn && (
              <ol class="rows phrases" aria-label="Phrases">
                {call.phrases.map((phrase, i) => (
                  <li key={phrase.first}>
                    <button type="button" aria-current={player.turn.value?.phrase === i ? 'step' : undefined} onClick={() => player.callPhrases(call, i)}>Phrase {i + 1}</button>
                    <span class="quiet">{player.form.wordsOf(player.form.rangeOfBars(phrase.first, phrase.first + phrase.count - 1))}, {signs(phraseWords(phrase))}</span>
                  </li>
                ))}
              </ol>
            )}
          </div>
        );
      })}
      {calls.some(call => call === turns?.call) && (
        <fieldset>
          <legend>The phrase on the neck</legend>
          {choose('called', 'While it is played')}
          {choose('always', 'In my answer too')}
          {choose('never', 'Never: by ear')}
        </fieldset>
      )}
    </section>
  );
}

/** Whose turn it is, where it can't be missed. */
export function TurnBanner() {
  const player = usePlayer();
  const turn = player.turn.value;
  if (!turn) return null;
  return (
    <section class={turn.isCall ? 'turn' : 'turn is-answer'} aria-label="Call and response">
      <p><strong>{player.counting.value ? 'Counting in' : player.turnWords(turn)}</strong></p>
      <button type="button" onClick={() => player.move(0)}>Again</button>
      <button type="button" onClick={() => player.move(1)}>Next phrase</button>
      <button type="button" onClick={() => player.callPhrases(null)}>End</button>
    </section>
  );
}
