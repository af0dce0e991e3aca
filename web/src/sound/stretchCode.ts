import code from 'signalsmith-stretch?raw';

/*
 * What is changed in the library's node, version 1.3.2, which is locked:
 * - It loses its place when what it plays goes over the end of one buffer into the next: it counts what it copied as the buffer's length.
 * - It looks up the sound anew at each step, as after a jump, which makes low tones up to eight cents sharp. Where the sound goes on from the
 *   step before, it is now given what is new and no more: tones keep their pitch to a fraction of a cent, for less work.
 */
const changes: readonly (readonly [from: string, to: string])[] = [
  ['audioSamples += count;\n\t\t\t\t\t\tblockSamples += count;', 'audioSamples += audioBuffer[0].length;\n\t\t\t\t\t\tinputSamples += count;\n\t\t\t\t\t\tblockSamples += count;'],
  [
    'let buffers = outputList[0].map((_, c) => new Float32Array(memory, this.buffersIn[c], this.bufferLength));',
    `let fresh = inputSamplesEnd - this.readUpTo;
				let goesOn = fresh >= 0 && fresh <= this.bufferLength;
				let wanted = goesOn ? fresh : this.bufferLength;
				this.readUpTo = inputSamplesEnd;
				let buffers = outputList[0].map((_, c) => new Float32Array(memory, this.buffersIn[c], wanted));`,
  ],
  ['let inputSamples = inputSamplesEnd - this.bufferLength;', 'let inputSamples = inputSamplesEnd - wanted;'],
  ['if (blockSamples < this.bufferLength) {', 'if (blockSamples < wanted) {'],
  [
    'wasmModule._seek(this.bufferLength, currentMapSegment.rate);\n\t\t\t\twasmModule._process(0, outputBlockSize);',
    `if (goesOn) {
					wasmModule._process(wanted, outputBlockSize);
				} else {
					wasmModule._seek(wanted, currentMapSegment.rate);
					wasmModule._process(0, outputBlockSize);
				}`,
  ],
  // What was read before a pause is not what comes before the next sound.
  ['if (!currentMapSegment.active) {', 'if (!currentMapSegment.active) {\n\t\t\t\tthis.readUpTo = -Infinity;'],
];

/** The library's code with the changes above. */
export function changedCode(original: string): string {
  return changes.reduce((text, [from, to]) => {
    if (text.split(from).length !== 2) throw new Error(`The time-stretch library has changed: look for "${from}".`);
    return text.replace(from, () => to);
  }, original);
}

/** The time-stretch as a module that can be loaded into the page and into its sound worklet. */
export const stretchModule = (): string => `data:text/javascript;base64,${btoa(changedCode(code))}`;
