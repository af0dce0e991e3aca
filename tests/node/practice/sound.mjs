// Measures recorded sound: when notes begin, how high a tone is, and how far two passages are apart.

/** Moments, in seconds of the sound's clock, at which the sound rises sharply; at least some time apart. */
export function onsets({ first, rate, samples }, apart) {
  const hop = 24;
  const width = 96;
  const energy = [];
  for (let i = 1; i + width < samples.length; i += hop) {
    let sum = 0;
    // Differences weigh the attack, which is bright, more than the tone.
    for (let k = i; k < i + width; k++) sum += (samples[k] - samples[k - 1]) ** 2;
    energy.push(Math.sqrt(sum / width));
  }
  const highest = energy.reduce((a, b) => Math.max(a, b), 0);
  const found = [];
  let last = -Infinity;
  for (let i = 60; i < energy.length; i++) {
    if (energy[i] < highest * 0.25 || energy[i] < 3 * energy[i - 40] || (i - last) * hop / rate < apart) continue;
    // From where it starts to rise.
    let start = i;
    while (start > i - 40 && energy[start - 1] < energy[start] && energy[start - 1] > energy[i] * 0.1) start--;
    found.push((first + start * hop + width / 2) / rate);
    last = i;
  }
  return found;
}

/** The song's second that the cursor showed when a moment was heard; null outside what was recorded. */
export function cursorAt({ cursor }, clock) {
  for (let i = 1; i < cursor.length; i++) {
    const [before, after] = [cursor[i - 1], cursor[i]];
    if (before[0] <= clock && after[0] >= clock && after[1] >= before[1]) return before[1] + (after[1] - before[1]) * (clock - before[0]) / (after[0] - before[0]);
  }
  return null;
}

/** The frequency near an expected one at which a stretch of sound is strongest, in hertz. */
export function hertz({ first, rate, samples }, from, to, expected) {
  const part = samples.slice(Math.round(from * rate) - first, Math.round(to * rate) - first);
  const window = part.map((_, i) => 0.5 - 0.5 * Math.cos(2 * Math.PI * i / part.length));
  let best = [0, 0];
  for (let cents = -60; cents <= 60; cents += 0.25) {
    const turn = 2 * Math.PI * expected * 2 ** (cents / 1200) / rate;
    let [real, imaginary] = [0, 0];
    for (let i = 0; i < part.length; i++) {
      real += part[i] * window[i] * Math.cos(turn * i);
      imaginary += part[i] * window[i] * Math.sin(turn * i);
    }
    const power = real * real + imaginary * imaginary;
    if (power > best[0]) best = [power, expected * 2 ** (cents / 1200)];
  }
  return best[1];
}

/** How many seconds later than expected a passage comes again, by where it is most like itself. */
export function lateness({ first, rate, samples }, at, period) {
  const length = Math.round(0.06 * rate);
  const from = Math.round((at - 0.008) * rate) - first;
  const reach = Math.round(0.012 * rate);
  let best = [-Infinity, 0];
  for (let lag = -reach; lag <= reach; lag++) {
    const other = from + Math.round(period * rate) + lag;
    if (other < 0 || other + length > samples.length) return null;
    let [product, power] = [0, 0];
    for (let i = 0; i < length; i++) {
      product += samples[from + i] * samples[other + i];
      power += samples[other + i] ** 2;
    }
    const likeness = product / Math.sqrt(power + 1);
    if (likeness > best[0]) best = [likeness, lag];
  }
  return best[1] / rate;
}

/** The root mean square of a stretch of sound, from 0 to 1. */
export function loudness({ first, rate, samples }, from, to) {
  const part = samples.slice(Math.round(from * rate) - first, Math.round(to * rate) - first);
  return Math.sqrt(part.reduce((sum, sample) => sum + (sample / 32767) ** 2, 0) / Math.max(1, part.length));
}
