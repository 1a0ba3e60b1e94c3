import { correlationTime } from './correlation-time.ts';
import { leastOfRises } from './least-of-rises.ts';
import type { RiseData } from './rise-pair.ts';
import { type StopFit, stopSearch } from './rise-stop-search.ts';

/** A rise that stopped before its time. */
export interface RiseStop {
  /** When, unit of t since the start. */
  readonly at: number;
  /** The level from then on, unit of y. */
  readonly level: number;
  /** How much further it would have climbed, unit of y. */
  readonly beyond: number;
  /** Likelihood ratio against the best rise that goes on: −2 ln of it, on the effective number of rows. */
  readonly ratio: number;
}

/** Above what any rise that went on reached in simulations: linear, leaking, convecting, of up to three exponentials, boosted. */
const STANDS_OUT = 20;
/** Slow noise that is worth fewer independent readings than this makes knees by itself. */
const FEWEST_EFFECTIVE = 8;
/** What a step of the readings leaves at least, as a standard deviation in steps: knees within it are not to be told. */
const STEP_SHARE = 0.25;

/**
 * Whether a rise stopped: is it told better by one or two exponentials whose clock stops, a − Σ B·exp(−min(s, c)/τ), than by any that go
 * on? A governor at its limit does that; so does a fan that steps in, or a load that falls: which of them the readings do not say.
 *
 * When: before a step response is fitted to a load that may have been throttled.
 * @param t instants, never decreasing, evenly spaced or nearly so (means in equal spans of time). Unit: any.
 * @param y as many readings, finite. Unit: any.
 * @param start instant of the step, unit of t
 * @param step of the readings, unit of y; 0 where it is not known
 * @param least what it must have fallen short of at least to count, unit of y
 * @returns null where it did not stop, or nothing shows it
 * Source: likelihood ratio of a broken curve with a nuisance parameter: D. V. Hinkley, Journal of the American Statistical Association 66,
 *   1971, 736–743, and R. B. Davies, Biometrika 74, 1987, 33–43 (both from memory); its threshold by simulation.
 * Cost: some 10 ms for 120 rows; less where nothing stops.
 * @example
 * riseStop(Float64Array.from({ length: 40 }, (_, k) => k), Float64Array.from({ length: 40 }, (_, k) => 10 * (1 - Math.exp(-Math.min(k, 12) / 10))), 0, 0.1, 1).at.toFixed(1) // '12.0'
 * riseStop([0, 1], [20, 30], 0, 0.1, 1) // null
 */
export function riseStop(t: ArrayLike<number>, y: ArrayLike<number>, start: number, step: number, least: number): RiseStop | null {
  const n = t.length;
  if (n < 12) return null;
  const s = Float64Array.from(t, (at) => at - start);
  const span = s[n - 1]! - s[0]!;
  const data: RiseData = { s, y: Float64Array.from(y), span, shortest: (0.5 * span) / (n - 1) };
  const floor = n * (STEP_SHARE * step) ** 2 || Number.MIN_VALUE;
  const stopped = stopSearch(data);
  if (!stopped || !(beyondOf(stopped) > least)) return null;
  const { time } = correlationTime(residualsOf(data, stopped));
  const effectiveCount = n / time;
  const ratio = effectiveCount * Math.log(Math.max(leastOfRises(data), floor) / Math.max(stopped.rss, floor));
  if (!(ratio > STANDS_OUT && effectiveCount > FEWEST_EFFECTIVE)) return null;
  return { at: stopped.at, level: stopped.level, beyond: beyondOf(stopped), ratio };
}

function beyondOf({ amplitudes, timeConstants, at }: StopFit): number {
  return amplitudes.reduce((sum, amplitude, k) => sum + amplitude * Math.exp(-at / timeConstants[k]!), 0);
}

function residualsOf({ s, y }: RiseData, { asymptote, amplitudes, timeConstants, at }: StopFit): Float64Array {
  return y.map((value, i) => {
    const time = Math.min(s[i]!, at);
    return value - asymptote + amplitudes.reduce((sum, amplitude, k) => sum + amplitude * Math.exp(-time / timeConstants[k]!), 0);
  });
}
