import { PitchDetector } from 'pitchy';

const Window = 8192;
const LeastClarity = 0.9;

/** Listens to the microphone and tells the pitch it hears; null for none. It records nothing. */
export async function listenToMicrophone(context: AudioContext, tell: (hertz: number | null) => void): Promise<() => void> {
  if (!navigator.mediaDevices?.getUserMedia) throw new Error('This browser gives this page no microphone. Tune by ear with the buttons.');
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({ audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false } });
  } catch (error) {
    throw new Error(error instanceof DOMException && error.name === 'NotAllowedError'
      ? 'The microphone was not allowed. Tune by ear with the buttons, or allow it in the browser and press again.'
      : 'No microphone was found. Tune by ear with the buttons.');
  }
  const input = context.createMediaStreamSource(stream);
  const analyser = context.createAnalyser();
  analyser.fftSize = Window;
  input.connect(analyser);
  const detector = PitchDetector.forFloat32Array(Window);
  detector.minVolumeDecibels = -45;
  const samples = new Float32Array(Window);
  const timer = setInterval(() => {
    analyser.getFloatTimeDomainData(samples);
    const [hertz, clarity] = detector.findPitch(samples, context.sampleRate);
    tell(clarity >= LeastClarity && hertz > 20 && hertz < 1500 ? hertz : null);
  }, 100);
  return () => {
    clearInterval(timer);
    input.disconnect();
    for (const track of stream.getTracks()) track.stop();
  };
}
