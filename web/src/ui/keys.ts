import type { Player } from '../store/player.ts';

/** A key, what it does, and how. Keys are those of KeyboardEvent.key; letters in lower case. */
export interface Key { readonly keys: readonly string[]; readonly shown: string; readonly words: string; readonly act: (player: Player, event: KeyboardEvent) => void }

const faster = (by: number) => (player: Player) => player.setSpeed(player.kept.value.speed + by);
const loopEdge = (edge: 'start' | 'end') => (player: Player) => {
  const { form } = player;
  const loop = player.loop.value;
  const here = player.bar.value;
  const [first, last] = loop ? [form.barAt(loop.start), form.barAt(loop.end - 1e-3)] : [here, here];
  if (edge === 'start') player.loopBars(here, Math.max(here, last));
  else player.loopBars(Math.min(first, here), here);
};
const toStep = (by: number) => (player: Player) => {
  const next = (player.step.value ?? (by > 0 ? -1 : player.song.steps.length)) + by;
  if (player.song.steps[next]) player.openStep(next);
};

export const keys: readonly Key[] = [
  { keys: [' '], shown: 'Space', words: 'play, stop', act: player => player.toggle() },
  { keys: ['ArrowLeft'], shown: '←', words: 'a bar or called phrase back; with Shift a section back', act: (player, event) => event.shiftKey ? player.seekSection(-1) : player.move(-1) },
  { keys: ['ArrowRight'], shown: '→', words: 'a bar or called phrase on; with Shift a section on', act: (player, event) => event.shiftKey ? player.seekSection(1) : player.move(1) },
  { keys: ['Home'], shown: 'Home', words: 'to the start of the loop or the song', act: player => player.toStart() },
  { keys: ['ArrowUp'], shown: '↑', words: 'faster by 5 %', act: faster(5) },
  { keys: ['ArrowDown'], shown: '↓', words: 'slower by 5 %', act: faster(-5) },
  { keys: ['l'], shown: 'L', words: 'loop this bar; stop looping', act: player => player.loop.value ? player.setLoop(null) : player.loopBars(player.bar.value, player.bar.value) },
  { keys: ['['], shown: '[', words: 'start the loop at this bar', act: loopEdge('start') },
  { keys: [']'], shown: ']', words: 'end the loop after this bar', act: loopEdge('end') },
  { keys: ['r'], shown: 'R', words: 'call and response in a free stretch; stop it', act: player => player.toggleCalls() },
  { keys: ['m'], shown: 'M', words: 'without my part, with it again', act: player => player.toggleMine() },
  { keys: ['k'], shown: 'K', words: 'click on and off', act: player => player.setLikes({ click: !player.likes.value.click }) },
  { keys: ['c'], shown: 'C', words: 'count-in on and off', act: player => player.setLikes({ countIn: player.likes.value.countIn === 'never' ? 'start' : 'never' }) },
  { keys: ['n'], shown: 'N', words: 'next step of the lesson', act: toStep(1) },
  { keys: ['p'], shown: 'P', words: 'step before', act: toStep(-1) },
  { keys: ['b'], shown: 'B', words: 'say where it is', act: player => player.say(`${player.form.whereabouts(player.place)} `) },
  { keys: ['f'], shown: 'F', words: 'pages follow the music, or stay', act: player => player.setLikes({ follows: !player.likes.value.follows }) },
  { keys: ['h'], shown: 'H', words: 'neck for the other hand', act: player => player.setLikes({ leftHanded: !player.likes.value.leftHanded }) },
];

const takesKeys = 'input:not([type=range]):not([type=checkbox]):not([type=radio]), select, textarea, [contenteditable], dialog[open] *';

/** Listens for keys on the whole page; what is typed into a field stays there. Returns a way to stop. */
export function listen(player: Player, openHelp: () => void): () => void {
  const pressed = (event: KeyboardEvent) => {
    const target = event.target as Element;
    if (event.ctrlKey || event.altKey || event.metaKey || target.closest(takesKeys)) return;
    if (event.key === '?') {
      event.preventDefault();
      openHelp();
      return;
    }
    const key = keys.find(k => k.keys.includes(event.key.length === 1 ? event.key.toLowerCase() : event.key));
    if (!key || (!player.likes.value.keys && event.key.length === 1)) return;
    // A slider has its own arrows, a button its own space bar.
    if (target.matches('input[type=range]') && event.key.startsWith('Arrow')) return;
    if (target.closest('button, summary, input[type=checkbox], input[type=radio]') && event.key === ' ') return;
    if (target.matches('input[type=radio]') && event.key.startsWith('Arrow')) return;
    event.preventDefault();
    key.act(player, event);
  };
  // After a click with a mouse or finger the space bar plays, and does not press that button again.
  const clicked = (event: MouseEvent) => { if (event.detail > 0) (event.target as Element).closest<HTMLElement>('button')?.blur(); };
  addEventListener('keydown', pressed);
  addEventListener('click', clicked);
  return () => {
    removeEventListener('keydown', pressed);
    removeEventListener('click', clicked);
  };
}
