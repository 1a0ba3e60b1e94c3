import type { RisePair } from './rise-pair.ts';
import { bothRise } from './rise-walk.ts';

/** A value with its 95 % interval; an end is infinite where there is none. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Value ± half.
 * @example
 * ranged(5, 1) // { value: 5, low: 4, high: 6 }
 */
export function ranged(value: number, half: number): Ranged {
  return { value, low: value - half, high: value + half };
}

/**
 * From the lowest to the highest of all, about a value.
 * @example
 * unionOf(5, [{ value: 4, low: 3, high: 5 }, { value: 6, low: 5, high: 8 }]) // { value: 5, low: 3, high: 8 }
 */
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

/**
 * Whether both parts may rise with a sum of squares up to `cut`.
 * @example
 * mayRise({ amplitudes: [3, -1], rss: 1, inverse: [[1, 0, 0], [0, 1, 0], [0, 0, 1]] }, 2) // true
 * mayRise({ amplitudes: [3, -2], rss: 1, inverse: [[1, 0, 0], [0, 1, 0], [0, 0, 1]] }, 2) // false
 */
export function mayRise(pair: RisePair, cut: number): boolean {
  return pair.amplitudes[0] + reach(pair, cut, 1) >= 0 && pair.amplitudes[1] + reach(pair, cut, 2) >= 0;
}

/**
 * Where the asymptote may be; of a fit whose parts do not both rise only the end towards those that do.
 * @example
 * asymptoteRange({ asymptote: 60, amplitudes: [3, 1], rss: 1, inverse: [[4]] }, 2) // { value: 60, low: 58, high: 62 }
 * asymptoteRange({ asymptote: 60, amplitudes: [3, -1], rss: 1, inverse: [[4]] }, 2) // { value: 60, low: 62, high: 62 }
 */
export function asymptoteRange(pair: RisePair, cut: number): Ranged {
  const range = ranged(pair.asymptote, reach(pair, cut, 0));
  return bothRise(pair) ? range : { ...range, low: range.high };
}

/**
 * Where the amplitude of the faster (0) or slower (1) part may be: never below zero.
 * @example
 * amplitudeRange({ amplitudes: [1, 5], rss: 1, inverse: [[0, 0], [0, 4]] }, 2, 0) // { value: 1, low: 0, high: 3 }
 */
export function amplitudeRange(pair: RisePair, cut: number, part: 0 | 1): Ranged {
  const { value, low, high } = ranged(pair.amplitudes[part], reach(pair, cut, 1 + part));
  return { value, low: Math.max(0, low), high };
}

/**
 * Where the faster time constant may be.
 * @example
 * fastRange({ fast: 1, rss: 1, inverse: [[], [], [], [0, 0, 0, 1]] }, 2).high // 2.718…
 */
export function fastRange(pair: RisePair, cut: number): Ranged {
  const half = reach(pair, cut, 3);
  return { value: pair.fast, low: pair.fast * Math.exp(-half), high: pair.fast * Math.exp(half) };
}
