import type { Call } from '../song/song.ts';
import type { Form, Range } from './form.ts';

/** A turn of call and response: bars with a phrase in them, or the same bars left for the answer. */
export interface Turn extends Range {
  /** Index into the call's phrases. */
  readonly phrase: number;
  readonly isCall: boolean;
}

/** A row of turns, played round and round. */
export interface Turns {
  readonly call: Call;
  readonly turns: readonly Turn[];
}

/** Each phrase's bars twice: once with the phrase, once as long without it. */
export function turnsOf(call: Call, form: Form): Turns {
  return {
    call,
    turns: call.phrases.flatMap((phrase, index) => {
      const range = form.rangeOfBars(phrase.first, phrase.first + phrase.count - 1);
      return [{ ...range, phrase: index, isCall: true }, { ...range, phrase: index, isCall: false }];
    }),
  };
}

/** The turn of a time through, from 0. */
export const turnAt = ({ turns }: Turns, pass: number): Turn | undefined => turns[pass % Math.max(1, turns.length)];

/** The turn in which a place of the song is called; the first one outside them all. */
export function turnFrom({ turns }: Turns, song: number): number {
  return Math.max(0, turns.findIndex(turn => turn.isCall && song >= turn.start - 1e-3 && song < turn.end - 1e-3));
}
