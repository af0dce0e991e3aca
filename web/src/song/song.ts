/** What the page knows of the song, as Fretlore wrote it into the file. Times are seconds of the song as written, repeats unrolled. */
export interface Song {
  readonly format: number;
  readonly id: string;
  readonly title: string;
  readonly artist?: string;
  readonly credits?: string;
  readonly rights?: string;
  readonly key: string;
  readonly madeBy: string;
  readonly seconds: number;
  readonly bars: readonly WrittenBar[];
  readonly played: readonly PlayedBar[];
  readonly stretches: readonly Stretch[];
  readonly parts: readonly Part[];
  readonly roles: readonly Role[];
  readonly chords: readonly Chord[];
  readonly scales: readonly Scale[];
  readonly shapes: readonly Shape[];
  readonly steps: readonly Step[];
  readonly roadMaps: readonly RoadMap[];
  readonly calls: readonly Call[];
  readonly recordings: readonly Recording[];
  readonly sound: SoundInfo;
  readonly views: readonly View[];
}

/** A recording that the sheet lines up: places of the song and where the file has them, in seconds. */
export interface Recording { readonly name: string; readonly points: readonly { readonly song: number; readonly take: number }[] }

export interface WrittenBar { readonly number: number; readonly pickup: boolean; readonly meter: string }

export interface PlayedBar {
  /** Index into the written bars. */
  readonly bar: number;
  readonly pass: number;
  readonly start: number;
  /** Quarter notes a minute. */
  readonly quarters: number;
  readonly beats: readonly number[];
  /** Seconds from beat to beat of a count before this bar. */
  readonly count: readonly number[];
}

export interface Stretch { readonly kind: 'section' | 'riff' | 'free'; readonly name: string; readonly part?: number; readonly first: number; readonly count: number }

export interface OpenString { readonly name: string; readonly midi: number }

export interface Moment { readonly at: number; readonly index: number }

export interface CapoMove { readonly at: number; readonly fret: number; readonly strings?: readonly [number, number] }

export interface Part {
  readonly name: string;
  readonly title: string;
  /** From the low string to the high one. */
  readonly strings: readonly OpenString[];
  readonly capo: number;
  /** The lowest and the highest string under a partial capo; absent where it covers all, and frets count from it. */
  readonly capoStrings?: readonly [number, number];
  /** Where it moves, in order of time; absent where it never does. */
  readonly capos?: readonly CapoMove[];
  readonly frets: number;
  readonly aside: number;
  readonly notes: readonly Note[];
  readonly chords: readonly Moment[];
  readonly scales: readonly Moment[];
}

export interface Note {
  readonly id: number;
  readonly held?: readonly number[];
  readonly on: number;
  readonly off: number;
  /** 1 is the highest. */
  readonly string: number;
  /** Counted from a capo over all strings, or else from the nut. */
  readonly fret: number;
  readonly pitch: string;
  readonly midi: number;
  readonly finger?: string;
  readonly role: number;
  readonly how?: string;
}

export interface Role { readonly degree: string; readonly words: string; readonly kind: 'chord' | 'tension' | 'leading' | 'key' | 'outside' | 'dead' }

export interface Chord { readonly symbol: string; readonly reason: string; readonly notes: readonly string[] }

export interface Tone { readonly pitchClass: number; readonly degree: string; readonly name: string }

export interface Scale { readonly name: string; readonly tones: readonly Tone[]; readonly reason: string }

export interface Shape { readonly name: string; readonly symbol?: string; readonly reason?: string; readonly frets: readonly (number | null)[] }

export interface CallOut { readonly name: string; readonly headline: readonly string[]; readonly walkThrough: readonly string[]; readonly noteByNote: readonly string[] }

/** A lick in another place or key. */
export interface Version { readonly name: string; readonly title: string; readonly hand: string; readonly fingers?: string; readonly tab: string }

export interface Step {
  readonly title: string;
  readonly teaches: readonly string[];
  readonly speeds: readonly number[];
  readonly say?: string;
  readonly callOuts: readonly CallOut[];
  readonly versions: readonly Version[];
  readonly shapes: readonly string[];
  readonly chords: readonly number[];
  readonly scales: readonly number[];
  readonly difficulty?: string;
  readonly hard: readonly string[];
  readonly minutes: number;
}

export interface Aim { readonly note: string; readonly pitchClass: number; readonly words: string }

/** What holds in one bar of a free stretch. */
export interface FreeBar {
  readonly fixed?: string;
  readonly scale?: Scale;
  readonly highestString?: number;
  readonly lowestString?: number;
  readonly lowestFret?: number;
  readonly highestFret?: number;
  readonly aims: readonly Aim[];
  readonly rules: readonly string[];
}

export interface RoadMap { readonly name: string; readonly part: number; readonly rules: readonly string[]; readonly bars: readonly FreeBar[] }

export interface Phrase { readonly kind: 'free' | 'fixed' | 'lick' | 'answer' | 'sequence'; readonly of?: string; readonly first: number; readonly count: number }

/** A free stretch played out once, for call and response. */
export interface Call {
  /** The road map's name. */
  readonly name: string;
  readonly part: number;
  /** Seconds of the song where it begins, and its sound with it. */
  readonly start: number;
  readonly phrases: readonly Phrase[];
  /** Their ids are on no page. */
  readonly notes: readonly Note[];
  /** The element that holds its sound. */
  readonly sound?: string;
}

export interface SoundInfo { readonly seconds: number; readonly pieceSeconds: number; readonly pieces: number; readonly missing?: string }

export interface View { readonly id: string; readonly part?: number; readonly narrow: boolean }

/** Pages of the engraver as the file holds them. */
export interface Pages { readonly style: string; readonly glyphs: string; readonly pages: readonly string[] }
