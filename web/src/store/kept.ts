/** What is kept for every song: how this player likes the page. */
export interface Likes {
  theme: 'device' | 'light' | 'dark';
  leftHanded: boolean;
  /** Hertz of the A above middle C. */
  a4: number;
  click: boolean;
  countIn: 'never' | 'start' | 'loop';
  volume: number;
  clickVolume: number;
  /** Whether single keys do things without Ctrl or Alt. */
  keys: boolean;
  saysBars: boolean;
  follows: boolean;
  neckShown: boolean;
  /** When a called phrase is on the neck. */
  callShown: 'never' | 'called' | 'always';
}

export const usualLikes: Likes = {
  theme: 'device', leftHanded: false, a4: 440, click: false, countIn: 'start', volume: 1, clickVolume: 0.8, keys: true, saysBars: false, follows: true,
  neckShown: true, callShown: 'called',
};

export interface StepProgress { seconds: number; speed: number; done: boolean; goal: number }

export interface KeptLoop { name: string; start: number; end: number; speed: number }

/** What is kept for one song. */
export interface Kept {
  mine: number;
  levels: number[];
  speed: number;
  semitones: number;
  view: 'mine' | 'all';
  steps: Record<string, StepProgress>;
  loops: KeptLoop[];
  takes: Record<string, { song: number; take: number }[]>;
}

export const usualKept = (parts: number): Kept => ({
  mine: 0, levels: Array.from({ length: parts }, () => 1), speed: 100, semitones: 0, view: 'mine', steps: {}, loops: [], takes: {},
});
