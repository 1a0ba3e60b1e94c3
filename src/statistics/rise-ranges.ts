import type { RisePair } from './rise-pair.ts';
import { bothRise } from './rise-walk.ts';

/** A value with its 95 % interval; an end is infinite where there is none. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Value ± half. */
export function ranged(value: number, half: number): Ranged {
  return { value, low: value - half, high: value + half };
}

/** From the lowest to the highest of all, about a value. */
export function unionOf(value: number, ranges: readonly Ranged[]): Ranged {
  return {
    value,
    low: Math.min(value, ...ranges.map(({ low }) => low)),
    high: Math.max(value, ...ranges.map(({ high }) => high)),
  };
}

/** How far a parameter of a fit may move until the sum of squares reaches `cut`; parameters in the order of its inverse. */
function reach({ rss, inverse }: RisePair, cut: number, parameter: number): number {
  return Math.sqrt(Math.max(0, cut - rss) * inverse[parameter]![parameter]!);
}

/** Whether both parts may rise with a sum of squares up to `cut`. */
export function mayRise(pair: RisePair, cut: number): boolean {
  return pair.amplitudes[0] + reach(pair, cut, 1) >= 0 && pair.amplitudes[1] + reach(pair, cut, 2) >= 0;
}

/** Where the asymptote may be; of a fit whose parts do not both rise only the end towards those that do. */
export function asymptoteRange(pair: RisePair, cut: number): Ranged {
  const range = ranged(pair.asymptote, reach(pair, cut, 0));
  return bothRise(pair) ? range : { ...range, low: range.high };
}

/** Where the amplitude of the faster (0) or slower (1) part may be: never below zero. */
export function amplitudeRange(pair: RisePair, cut: number, part: 0 | 1): Ranged {
  const { value, low, high } = ranged(pair.amplitudes[part], reach(pair, cut, 1 + part));
  return { value, low: Math.max(0, low), high };
}

/** Where the faster time constant may be. */
export function fastRange(pair: RisePair, cut: number): Ranged {
  const half = reach(pair, cut, 3);
  return { value: pair.fast, low: pair.fast * Math.exp(-half), high: pair.fast * Math.exp(half) };
}
