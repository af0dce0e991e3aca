/** Note names and degrees with the signs of music: "Bb3" is "B♭3", "#4" is "♯4". */
export function signs(text: string): string {
  return text.replace(/(?<![A-Za-z])([A-G])(##|bb|#|b)(?=$|[^A-Za-z#]|m(?![a-z])|maj|min|dim|aug|sus|add|M)/g, (_, letter: string, sign: string) => letter + signOf(sign))
    .replace(/(?<![A-Za-z0-9])(##|bb|#|b)(?=\d)/g, sign => signOf(sign))
    .replace(/([a-z0-9])(#|b)(?=\d)/g, (_, before: string, sign: string) => before + signOf(sign));
}

const signOf = (sign: string) => sign.replaceAll('#', '♯').replaceAll('b', '♭');

/** "one bar", "3 bars". */
export const counted = (count: number, one: string, many = `${one}s`) => count === 1 ? `1 ${one}` : `${count} ${many}`;

/** Minutes and seconds as on a clock. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
