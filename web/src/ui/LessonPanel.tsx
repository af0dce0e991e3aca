import { signs } from '../words.ts';
import { usePlayer } from './app.ts';
import { Calls } from './Calls.tsx';
import { ChordFrame } from './ChordFrame.tsx';
import type { Step } from '../song/song.ts';

/** The steps of the lesson in order, the one that is worked on opened. */
export function LessonPanel() {
  const player = usePlayer();
  const { steps } = player.song;
  if (steps.length === 0) return <p>The sheet has no lesson. Loops has the song's sections and riffs.</p>;
  return (
    <ol class="steps">
      {steps.map((step, i) => {
        const progress = player.progressOf(step);
        const isOpen = player.step.value === i;
        return (
          <li key={step.title} class={isOpen ? 'step is-open' : 'step'}>
            <button type="button" class="step-head" aria-expanded={isOpen} onClick={() => player.openStep(isOpen ? null : i)}>
              <span class="step-number">{progress.done ? '✓' : i + 1}</span>
              <span class="step-title">{signs(step.title)}</span>
              <span class="step-note">{progress.done ? 'done' : `${Math.floor(progress.seconds / 60)} of ${step.minutes} min`}{step.difficulty && step.difficulty !== 'none' ? `, ${step.difficulty}` : ''}</span>
            </button>
            {isOpen && <StepBody step={step} />}
          </li>
        );
      })}
    </ol>
  );
}

function StepBody({ step }: { step: Step }) {
  const player = usePlayer();
  const progress = player.progressOf(step);
  const found = step.teaches.flatMap(name => player.form.find(name) ?? []);
  const speeds = step.speeds.length > 0 ? step.speeds : [60, 80, 100];
  const shapes = step.shapes.flatMap(name => player.song.shapes.find(shape => shape.name === name) ?? []);
  return (
    <div class="step-body">
      {step.say && <blockquote>{signs(step.say)}</blockquote>}
      {found.length === 0 && <p>The song as it stands does not play this, so there is nothing to loop.</p>}
      <div class="presets" role="group" aria-label="Speeds of this step">
        {speeds.map(speed => (
          <button type="button" key={speed} aria-pressed={player.kept.value.speed === speed} onClick={() => {
            player.setSpeed(speed);
            player.setProgress(step, { goal: speed });
          }}>{speed} %</button>
        ))}
        {speeds.length > 1 && found.length > 0 && (
          <button type="button" aria-pressed={player.ramp.value !== null}
            onClick={() => { player.ramp.value = player.ramp.value ? null : { from: Math.min(...speeds), to: Math.max(...speeds), by: 5, passes: 2 }; }}>
            Rise from {Math.min(...speeds)} to {Math.max(...speeds)} %
          </button>
        )}
      </div>
      <Calls calls={player.song.calls.filter(call => step.teaches.includes(call.name))} />
      {step.callOuts.map(callOut => (
        <section key={callOut.name}>
          {step.callOuts.length > 1 && <h3>{callOut.name}</h3>}
          <p>{callOut.headline.join(' ')}</p>
          <details>
            <summary>String by string</summary>
            <ol class="breaths">{callOut.walkThrough.map((breath, i) => <li key={i}>{breath}</li>)}</ol>
          </details>
          <details>
            <summary>Note by note</summary>
            <ol class="breaths">{callOut.noteByNote.map((breath, i) => <li key={i}>{breath}</li>)}</ol>
          </details>
        </section>
      ))}
      {step.versions.length > 0 && (
        <details>
          <summary>Elsewhere on the neck and in other keys</summary>
          {step.versions.map((version, i) => (
            <section key={i}>
              <h3>{step.versions.some(other => other.name !== version.name) ? `${version.name}: ${version.title}` : version.title}</h3>
              <p class="quiet">{version.hand === 'none' ? 'Open strings only' : `For the hand: ${version.hand}`}{version.fingers ? `. ${signs(version.fingers)}` : ''}.</p>
              <pre class="tab" tabIndex={0} role="group" aria-label={`Tab: ${version.title}`}>{version.tab}</pre>
            </section>
          ))}
        </details>
      )}
      {shapes.length > 0 && <div class="frames">{shapes.map(shape => <ChordFrame key={shape.name} shape={shape} />)}</div>}
      {(step.chords.length > 0 || step.scales.length > 0) && (
        <details>
          <summary>Chords and scale, and why</summary>
          <dl class="reasons">
            {step.chords.map(index => player.song.chords[index]).map((chord, i) => chord && <div key={i}><dt>{signs(chord.symbol)}</dt><dd>{signs(chord.reason)}</dd></div>)}
            {step.scales.map(index => player.song.scales[index]).map((scale, i) => scale && <div key={`s${i}`}><dt>{signs(scale.name)}</dt><dd>{signs(scale.reason)}</dd></div>)}
          </dl>
        </details>
      )}
      {step.hard.length > 0 && <p class="hard">For the hand: {step.hard.join('; ')}.</p>}
      <label class="tick">
        <input type="checkbox" checked={progress.done} onChange={event => player.setProgress(step, { done: event.currentTarget.checked })} /> I have this one
      </label>
    </div>
  );
}
