type Draw = (now: number) => void;

const draws = new Set<Draw>();
let asked = 0;

function go(now: number): void {
  asked = draws.size > 0 ? requestAnimationFrame(go) : 0;
  for (const draw of draws) draw(now);
}

/** Calls a function at each frame of the screen until it is stopped. */
export function atEachFrame(draw: Draw): () => void {
  draws.add(draw);
  if (asked === 0) asked = requestAnimationFrame(go);
  return () => { draws.delete(draw); };
}
