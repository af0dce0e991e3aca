import { useId } from 'preact/hooks';

interface SliderProps {
  readonly label: string; readonly value: number; readonly min: number; readonly max: number; readonly step?: number; readonly text: string;
  readonly set: (value: number) => void;
}

/** A labelled slider that says its value in words. */
export function Slider({ label, value, min, max, step = 1, text, set }: SliderProps) {
  const id = useId();
  return (
    <div class="slider">
      <label for={id}>{label}</label>
      <input id={id} type="range" min={min} max={max} step={step} value={value} aria-valuetext={text} onInput={event => set(event.currentTarget.valueAsNumber)} />
      <output for={id}>{text}</output>
    </div>
  );
}
