/** The step response of a temperature to its load: time constant and asymptote. */
import type { Part } from '../../quantities/quantity.ts';
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { cholesky } from '../../statistics/cholesky.ts';
import { type StepFit, stepResponse } from '../../statistics/step-response.ts';
import { type TwoTimeConstants, twoTimeConstants } from '../../statistics/two-time-constants.ts';
import { isReason, type Reason, tooShort } from '../absent.ts';
import { duration } from '../in-words.ts';
import { addressOf, type Soak } from '../soak.ts';
import { ambientChannel } from './ambient.ts';
import type { LoadSeries } from './load-series.ts';

export interface Response {
  /** s */
  readonly timeConstant: number;
  /** Where the rise (or the temperature, without an ambient channel) would end. */
  readonly asymptote: number;
  /** Asymptote less the fitted start, K. */
  readonly height: number;
  /** Columns of the Cholesky factor of the covariance, for each parameter. */
  readonly parts: { readonly asymptote: readonly Part[]; readonly timeConstant: readonly Part[] };
  /** How many exponentials the readings bear. */
  readonly constants: 1 | 2;
  /** The fitted curve: asymptote − Σ amplitude·exp(−t/timeConstant), t in s since the load began. */
  readonly terms: readonly Term[];
}

export interface Term {
  readonly amplitude: number;
  readonly timeConstant: number;
}

/** Means in equal spans of time: short enough for the chip's own time constant, few enough for a quick fit of a long log. */
const BINS = 600;
/** It is no fit when the residuals are above this share of the step. */
const WORST_RESIDUAL = 0.05;
/** The load must have lasted this many time constants. */
const LEAST_SPAN = 2;

/**
 * Fits the load's response with one exponential or, where the readings bear it, with two (a chip on its board): the time
 * constant is then the longer one. The load is taken as constant: whether it was is for the caller to tell.
 */
export function responseOf(soak: Soak, series: LoadSeries, index: number): Response | Reason {
  const bins = binsOf(series);
  const fit = fitOf(bins);
  if ('failed' in fit) return { absent: 'no-fit', why: `No step response can be fitted to ${series.channel.name}: ${fit.failed}.` };
  if (fit.residualDeviation > WORST_RESIDUAL * Math.abs(fit.amplitude)) {
    return { absent: 'no-fit', why: `The course of ${series.channel.name} under load is not that of a step response.` };
  }
  const needed = LEAST_SPAN * fit.timeConstant;
  if (series.lasted >= needed)
    return toResponse(soak, fit, driftedOf(soak, bins, fit), addressOf('response', series.channel, index));
  const lasted = duration(series.lasted);
  return tooShort(
    `The load lasted ${lasted}; with a time constant near ${duration(fit.timeConstant)} a fit needs ${duration(needed)}.`,
    needed,
  );
}

/** One exponential, or two where the readings bear them. */
function fitOf({ t, y }: Bins): Fitted | { readonly failed: string } {
  const one = stepResponse(t, y, { start: 0 });
  const two = describes(one) ? NOT_TRIED : twoTimeConstants(t, y, { start: 0 });
  if (!('failed' in two) && ('failed' in one || bearsTwo(one, two))) return slowOf(two);
  return 'failed' in one ? one : oneOf(one);
}

/**
 * The same fit, had the ambient drifted over the load by its own standard uncertainty: an ambient that is stated and not measured
 * may have. Null where it is measured (it was taken off), not stated, or exact.
 */
function driftedOf(soak: Soak, { t, y }: Bins, fit: Fitted): Fitted | null {
  const stated = ambientChannel(soak) ? null : soak.context.ambient;
  const drift = stated ? standardUncertainty(stated) : null;
  if (!drift) return null;
  const last = t[t.length - 1]!;
  const drifted = y.map((value, i) => value + drift * (t[i]! / last - 0.5));
  const again = fit.constants === 1 ? stepResponse(t, drifted, { start: 0 }) : twoTimeConstants(t, drifted, { start: 0 });
  if ('failed' in again) return null;
  return 'amplitude' in again ? oneOf(again) : slowOf(again);
}

/** One exponential leaves so little, as a share of the step, that a second one is not looked for. */
const SMALL_RESIDUAL = 0.0002;
const NOT_TRIED = { failed: 'one exponential describes it' };

function describes(one: ReturnType<typeof stepResponse>): boolean {
  return !('failed' in one) && one.residualDeviation <= SMALL_RESIDUAL * Math.abs(one.amplitude);
}

/** What both models have in common; the covariance is over asymptote and time constant. */
interface Fitted {
  readonly asymptote: number;
  readonly amplitude: number;
  readonly timeConstant: number;
  readonly covariance: readonly (readonly number[])[];
  readonly residualDeviation: number;
  readonly dof: number;
  readonly constants: 1 | 2;
  readonly terms: readonly Term[];
}

function oneOf({ covariance, ...fit }: StepFit): Fitted {
  return { ...fit, covariance: minor(covariance, [0, 2]), constants: 1, terms: [fit] };
}

/** The slower exponential of two, with the whole step's height. */
function slowOf({ covariance, amplitudes, timeConstants, ...fit }: TwoTimeConstants): Fitted {
  const amplitude = amplitudes[0] + amplitudes[1];
  const terms = [0, 1].map((k) => ({ amplitude: amplitudes[k]!, timeConstant: timeConstants[k]! }));
  return { ...fit, amplitude, timeConstant: timeConstants[1], covariance: minor(covariance, [0, 4]), constants: 2, terms };
}

function minor(matrix: readonly (readonly number[])[], keep: readonly number[]): number[][] {
  return keep.map((row) => keep.map((column) => matrix[row]![column]!));
}

/** Two time constants are told apart when they differ threefold, both carry a share of the step, and the second one explains. */
const APART = 3;
const LEAST_AMPLITUDE = 0.05;
/** Critical value of the F test for two more parameters, at about 1 in 1000 (N. R. Draper and H. Smith, Applied Regression Analysis; from memory). */
const EXPLAINS = 7.5;

function bearsTwo(one: StepFit, two: TwoTimeConstants): boolean {
  const [fast, slow] = two.amplitudes;
  const total = fast + slow;
  const apart =
    two.timeConstants[1] >= APART * two.timeConstants[0] && fast / total > LEAST_AMPLITUDE && slow / total > LEAST_AMPLITUDE;
  const squares = one.residualDeviation ** 2 * (one.rows - 3);
  const rest = two.residualDeviation ** 2 * (two.rows - 5);
  const explained = (squares - rest) / 2 / (rest / Math.max(1, two.effectiveCount - 5));
  return apart && (rest === 0 || explained > EXPLAINS);
}

/**
 * Standard uncertainty, as a share, of what the model leaves out: leakage that rises with the temperature makes a device slower, free
 * convection makes it faster, so that no single time constant is exact. Common practice, no source; proved on simulated devices.
 */
const MODEL_SHARE = 0.01;

function toResponse(soak: Soak, fit: Fitted, drifted: Fitted | null, name: string): Response {
  const root = `run:${soak.context.run}/${name}`;
  const factor = cholesky(fit.covariance);
  const alone = (id: string, title: string, share: number): Part => ({ source: { id: `${root}/${id}`, title, dof: null }, share });
  const driftIn = (value: (of: Fitted) => number): Part[] =>
    drifted ? [alone('ambient', 'drift of the ambient during the load', value(drifted) - value(fit))] : [];
  const partsOf = (parameter: number): Part[] =>
    factor[parameter]!.map((share, column) => ({
      source: {
        id: `${root}/${column + 1}`,
        title: `fit of the step response in ${soak.context.run}`,
        dof: fit.dof,
      },
      share,
    }));
  const { timeConstant, asymptote, amplitude: height, constants, terms } = fit;
  const model = alone('model', 'what a step response leaves out of a real device', MODEL_SHARE * timeConstant);
  const parts = {
    asymptote: [...partsOf(0), ...driftIn((of) => of.asymptote)],
    timeConstant: [...partsOf(1), ...driftIn((of) => of.timeConstant), model],
  };
  return { timeConstant, asymptote, height, constants, terms, parts };
}

interface Bins {
  readonly t: Float64Array;
  readonly y: Float64Array;
}

/** Means of time and rise in equal spans of the load; empty spans (gaps) give no point. One pass. */
function binsOf({ t, readings, lasted }: LoadSeries): Bins {
  const sums = { t: new Float64Array(BINS), y: new Float64Array(BINS), n: new Float64Array(BINS) };
  for (let i = 0; i < t.length; i++) {
    const bin = Math.min(BINS - 1, Math.floor((t[i]! / lasted) * BINS));
    sums.t[bin]! += t[i]!;
    sums.y[bin]! += readings.y[i]!;
    sums.n[bin]! += 1;
  }
  const filled = [...sums.n.keys()].filter((bin) => sums.n[bin]! > 0);
  const meanIn = (values: Float64Array) => Float64Array.from(filled, (bin) => values[bin]! / sums.n[bin]!);
  return { t: meanIn(sums.t), y: meanIn(sums.y) };
}

export function isResponse(value: Response | Reason): value is Response {
  return !isReason(value);
}
