/** A running counter that was reset: what it gained, with the steps across resets guessed from those about them. */
import type { Readings } from '../readings.ts';

export interface CounterTotal {
  /** Sum of the increases that were read. */
  readonly counted: number;
  readonly resets: number;
  /** Of the steps across resets; null without a reset, or where too few steps tell. */
  readonly guessed: { readonly value: number; readonly u: number; readonly dof: number } | null;
}

/** Fewest steps on which the guess is tried. */
const TRIALS = 3;

/**
 * A fall of the counter is a reset. What it gained in that step is taken as its length times the mean rate of the step before and the step after it;
 * the same guess is made for the steps that were read, and its mean square error there, as a rate, is its variance (leave-out check:
 * common practice, no source). One pass.
 */
export function acrossResets({ t, y }: Pick<Readings, 't' | 'y'>): CounterTotal {
  const rates = new Float64Array(Math.max(0, y.length - 1));
  const resets: number[] = [];
  let sum = 0;
  for (let i = 0; i < rates.length; i++) {
    const increase = y[i + 1]! - y[i]!;
    const width = t[i + 1]! - t[i]!;
    rates[i] = increase < 0 || width <= 0 ? Number.NaN : increase / width;
    if (increase < 0) resets.push(i);
    else sum += increase;
  }
  return { counted: sum, resets: resets.length, guessed: resets.length > 0 ? guessAcross(t, rates, resets) : null };
}

function guessAcross(t: Float64Array, rates: Float64Array, resets: readonly number[]): CounterTotal['guessed'] {
  const guess = (i: number): number => {
    const about = [rates[i - 1], rates[i + 1]].filter((rate) => rate !== undefined && !Number.isNaN(rate)) as number[];
    return about.reduce((total, rate) => total + rate, 0) / about.length;
  };
  let [squares, trials] = [0, 0];
  for (let i = 1; i + 1 < rates.length; i++) {
    const error = rates[i]! - (rates[i - 1]! + rates[i + 1]!) / 2;
    if (Number.isNaN(error)) continue;
    squares += error ** 2;
    trials++;
  }
  // Neighbouring trials share two steps of three.
  const m = Math.floor(trials / 3);
  if (m < TRIALS) return null;
  const widths = resets.map((i) => t[i + 1]! - t[i]!);
  const value = resets.reduce((total, i, k) => total + guess(i) * widths[k]!, 0);
  const square = widths.reduce((total, width) => total + width ** 2, 0);
  return Number.isNaN(value) ? null : { value, u: Math.sqrt((square * squares * (1 + 1 / m)) / trials), dof: m };
}
