import code from 'signalsmith-stretch?raw';

/*
 * The library's node loses its place when what it plays goes over the end of one buffer into the next: it counts what it copied as the
 * length of the buffer and goes on reading from where it began. Version 1.3.2, which is locked, has it in these two lines.
 */
const mistaken = /audioSamples \+= count;(\s+)blockSamples \+= count;/;
const mended = 'audioSamples += audioBuffer[0].length;$1inputSamples += count;$1blockSamples += count;';

/** The time-stretch as a module that can be loaded into the page and into its sound worklet. */
export function stretchModule(): string {
  if (!mistaken.test(code)) throw new Error('The time-stretch library has changed: look whether its buffers join now.');
  return `data:text/javascript;base64,${btoa(code.replace(mistaken, mended))}`;
}
