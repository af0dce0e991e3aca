// Runs in a page before its own code: writes down what goes to the speakers, sample by sample, and where the cursor is at which moment of the sound's clock: the song's second, its pixels
// from the page's left, and the milliseconds since the frame that it is drawn in began.
export const recorder = () => {
  const Native = window.AudioContext;
  const code = `registerProcessor('ear', class extends AudioWorkletProcessor {
    constructor() { super(); this.block = new Float32Array(4096); this.filled = 0; this.first = 0; }
    process([input]) {
      if (this.filled === 0) this.first = currentFrame;
      for (let i = 0; i < 128; i++) this.block[this.filled + i] = input.length ? ((input[0][i] + (input[1] ?? input[0])[i]) / 2) : 0;
      this.filled += 128;
      if (this.filled === 4096) { this.port.postMessage([this.first, this.block.slice()]); this.filled = 0; }
      return true;
    }
  });`;
  let blocks = [];
  let cursor = [];
  let context = null;
  const connect = AudioNode.prototype.connect;
  const late = [];
  let ear = null;
  window.AudioContext = class extends Native {
    constructor(options) {
      super(options);
      context = this;
      this.audioWorklet.addModule(`data:text/javascript,${encodeURIComponent(code)}`).then(() => {
        ear = new AudioWorkletNode(this, 'ear', { numberOfOutputs: 0, channelCount: 2, channelCountMode: 'explicit' });
        ear.port.onmessage = event => blocks.push(event.data);
        for (const node of late) connect.call(node, ear);
      });
    }
  };
  AudioNode.prototype.connect = function (target, ...rest) {
    if (target instanceof AudioDestinationNode && this.context === context) {
      if (ear) connect.call(this, ear);
      else late.push(this);
    }
    return connect.call(this, target, ...rest);
  };
  const heardNow = () => {
    const { contextTime, performanceTime } = context.getOutputTimestamp();
    return contextTime ? Math.min(contextTime + (performance.now() - performanceTime) / 1000, context.currentTime) : context.currentTime - (context.outputLatency || 0);
  };
  new MutationObserver(changes => {
    const moved = changes.find(change => change.target.classList?.contains('cursor'));
    if (!moved || !context) return;
    const heard = heardNow();
    const since = performance.now() - document.timeline.currentTime;
    cursor.push([heard, Number(moved.target.dataset.at), new DOMMatrix(getComputedStyle(moved.target).transform).m41, since]);
  }).observe(document, { subtree: true, attributes: true, attributeFilter: ['data-at'] });
  window.heard = {
    clear() {
      blocks = [];
      cursor = [];
    },
    take() {
      const first = blocks[0]?.[0] ?? 0;
      const length = blocks.length ? blocks.at(-1)[0] + 4096 - first : 0;
      const samples = new Float32Array(length);
      for (const [at, block] of blocks) samples.set(block, at - first);
      return { first, rate: context?.sampleRate ?? 48000, samples: Array.from(samples, value => Math.round(value * 32767)), cursor };
    },
  };
};
