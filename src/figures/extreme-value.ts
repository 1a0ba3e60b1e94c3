/** The largest or smallest of noisy samples, and how far the quantity itself may have been from it. */
import { normalQuantile } from '../statistics/normal-quantile.ts';
import { freshReadings } from './held.ts';
import type { Readings } from './readings.ts';
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
 * Largest or smallest of the readings. Between two of them the quantity may have gone further by half the largest change between
 * neighbours (it never changed faster than it was seen to). The largest of m readings about one level lies above it by about
 * σ√(2 ln m) (H. Cramér, Mathematical Methods of Statistics, 28.6; from memory), m being what they are worth where `lasting` noise makes
 * them repeat each other. A reading that the sensor held for several rows counts once. Where readings scatter by less than half a step, the
 * step may hide noise: see `hiddenLift`. Needs a reading; `step` in the unit of y.
 */
export function extremeValue(
  readings: Readings,
  side: 'highest' | 'lowest',
  step: number,
  lasting: Scatter | null = null,
): ExtremeValue {
  const sign = side === 'highest' ? 1 : -1;
  const fresh = freshReadings(readings, step).y;
  const { deviation: quick, largest } = scatterOf(fresh);
  const slow = lasting && lasting.deviation > quick ? lasting : null;
  const deviation = slow?.deviation ?? quick;
  const y = slow ? readings.y : fresh;
  let value = y[0]!;
  for (const reading of y) if (sign * (reading - value) > 0) value = reading;
  const competing = y.filter((reading) => Math.abs(reading - value) <= COMPETING * deviation).length * (slow?.worth ?? 1);
  const seen = deviation * Math.sqrt(2 * Math.log(Math.max(1, competing)));
  const hidden = deviation < step / 2 ? step * hiddenLift(y.map((reading) => (sign * (value - reading)) / step)) : 0;
  const floor = step / Math.sqrt(12);
  return {
    value,
    u: Math.max(deviation, floor),
    dof: deviation > floor ? (slow?.dof ?? Math.max(1, y.length - 2)) : null,
    beyond: largest / 2,
    lifted: Math.max(seen, hidden),
  };
}

/** Of this many readings expected beyond a boundary, none is seen in 5 % of cases. */
const UNSEEN = 3;

/**
 * How far short of the near edge of the extreme's step the quantity may have stayed, in steps; `short` is what each reading lacks of the extreme,
 * in steps. Normal noise that takes a share p of readings across that edge is z(1 − p) of its deviations short of it; it takes a share q
 * across the far edge of the next step, z(1 − q) away; and the two edges are one step apart. Nothing where half of the readings are at the extreme;
 * half a step where it was read as seldom as the step beyond the next. Readings count from where the course first came within one step. p is taken as
 * low as chance may have left it (by two roots of the count, which stays one or more).
 */
function hiddenLift(short: Float64Array): number {
  const arrived = short.subarray(short.findIndex((steps) => steps < 3 / 2));
  const within = (steps: number) => arrived.filter((each) => each < steps).length;
  const [top, near, all] = [within(1 / 2), within(3 / 2), within(5 / 2)];
  const across = Math.max(1, top - 2 * Math.sqrt(top)) / all;
  if (across >= 1 / 2) return 0;
  const under = Math.max(UNSEEN, all - near) / all;
  const [before, behind] = [normalQuantile(1 - across), Math.max(0, normalQuantile(1 - Math.min(1 / 2, under)))];
  return before / (before + behind);
}

/** The 95 % interval, wider by both, each on its side. */
export function lopsided(
  [low, high]: readonly [number, number],
  side: 'highest' | 'lowest',
  { beyond, lifted }: ExtremeValue,
): readonly [number, number] {
  return side === 'highest' ? [low - lifted, high + beyond] : [low - beyond, high + lifted];
}
