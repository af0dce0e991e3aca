declare module 'signalsmith-stretch' {
  export interface StretchNode extends AudioWorkletNode {
    addBuffers(channels: Float32Array<ArrayBuffer>[], transfer: ArrayBuffer[]): Promise<number>;
    dropBuffers(): Promise<unknown>;
    schedule(change: {
      active?: boolean; output?: number; input?: number; rate?: number; semitones?: number; loopStart?: number; loopEnd?: number;
    }): Promise<unknown>;
    stop(): Promise<unknown>;
    latency(): Promise<number>;
  }
  export interface MakeStretch {
    (context: AudioContext, options: AudioWorkletNodeOptions): Promise<StretchNode>;
    moduleUrl: string;
  }
  const make: MakeStretch;
  export default make;
}

declare module 'signalsmith-stretch?raw' {
  const code: string;
  export default code;
}
