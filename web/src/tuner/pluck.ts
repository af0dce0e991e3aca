/** A plain string-like tone to tune by: harmonics that fall off, dying away over some seconds. */
export function pluck(context: AudioContext, output: AudioNode, hertz: number): void {
  const count = 12;
  const sines = new Float32Array(count + 1);
  for (let n = 1; n <= count; n++) sines[n] = 1 / n ** 1.3;
  const tone = context.createOscillator();
  tone.setPeriodicWave(context.createPeriodicWave(new Float32Array(count + 1), sines));
  tone.frequency.value = hertz;
  const level = context.createGain();
  const now = context.currentTime + 0.02;
  level.gain.setValueAtTime(0, now);
  level.gain.linearRampToValueAtTime(0.25, now + 0.005);
  level.gain.exponentialRampToValueAtTime(0.001, now + 4);
  tone.connect(level);
  level.connect(output);
  tone.start(now);
  tone.stop(now + 4);
  tone.onended = () => level.disconnect();
}
