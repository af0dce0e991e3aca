const outlines = {
  start: 'M5 4h2.5v16H5zM20 4v16L9 12z',
  back: 'M16 4v16L6 12z',
  on: 'M8 4v16l10-8z',
  play: 'M6 3v18l14-9z',
  stop: 'M5 5h14v14H5z',
} as const;

/** A plain sign on a button; the button's own words say what it does. */
export function Icon({ name }: { name: keyof typeof outlines }) {
  return <svg class="icon" viewBox="0 0 24 24" width={20} height={20} aria-hidden="true" focusable="false"><path d={outlines[name]} /></svg>;
}
