/** The largest or smallest of noisy samples, and how far the quantity itself may have been from it. */
import { scatterOf } from './scatter.ts';

export interface ExtremeValue {
  readonly value: number;
  /** Standard uncertainty of a single reading, and its degrees of freedom; null where the step of the sensor sets it. */
  readonly u: number;
  readonly dof: number | null;
  /** How far the quantity may have gone beyond the reading, and how far noise may have lifted the reading beyond it. */
  readonly beyond: number;
  readonly lifted: number;
}

/** Noise that lasts from reading to reading, where it can be told from what was measured. */
export interface Scatter {
  readonly deviation: number;
  /** Of how many independent readings each is worth: at most 1. */
  readonly worth: number;
  /** Degrees of freedom that the deviation is known with. */
  readonly dof: number;
}

/** Readings this many standard deviations from the extreme compete to be it. */
const COMPETING = 3;

/**
 * Largest or smallest of `y`. Between two readings the quantity may have gone further by half the largest change between
 * neighbours (it never changed faster than it was seen to). The largest of m readings about one level lies above it by about
 * σ√(2 ln m) (H. Cramér, Mathematical Methods of Statistics, 28.6; from memory), m being what they are worth where `lasting` noise makes
 * them repeat each other. Needs a reading; `step` in the unit of y.
 */
export function extremeValue(
  y: Float64Array,
  side: 'highest' | 'lowest',
  step: number,
  lasting: Scatter | null = null,
): ExtremeValue {
  const sign = side === 'highest' ? 1 : -1;
  const { deviation: quick, largest } = scatterOf(y);
  const slow = lasting && lasting.deviation > quick ? lasting : null;
  const deviation = slow?.deviation ?? quick;
  let value = y[0]!;
  for (const reading of y) if (sign * (reading - value) > 0) value = reading;
  let competing = 0;
  for (const reading of y) if (Math.abs(reading - value) <= COMPETING * deviation) competing++;
  const floor = step / Math.sqrt(12);
  return {
    value,
    u: Math.max(deviation, floor),
    dof: deviation > floor ? (slow?.dof ?? Math.max(1, y.length - 2)) : null,
    beyond: largest / 2,
    lifted: deviation * Math.sqrt(2 * Math.log(Math.max(1, competing * (slow?.worth ?? 1)))),
  };
}

/** The 95 % interval, wider by both, each on its side. */
export function lopsided(
  [low, high]: readonly [number, number],
  side: 'highest' | 'lowest',
  { beyond, lifted }: ExtremeValue,
): readonly [number, number] {
  return side === 'highest' ? [low - lifted, high + beyond] : [low - beyond, high + lifted];
}
