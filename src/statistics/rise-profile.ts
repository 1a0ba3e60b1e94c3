import { correlationTime } from './correlation-time.ts';
import { type ExponentialRise, exponentialRise } from './exponential-rise.ts';
import { linearLeastSquares } from './linear-least-squares.ts';
import { type RiseData, type RisePair, risePairAt } from './rise-pair.ts';
import { amplitudeRange, asymptoteRange, fastRange, mayRise, type Ranged, ranged, unionOf } from './rise-ranges.ts';
import { riseStart } from './rise-start.ts';
import { acceptedStretch, bestOfWalk, bothRise, MOST_SPANS, riseWalk } from './rise-walk.ts';
import { stepObstacle } from './step-obstacle.ts';
import { studentQuantile } from './student-quantile.ts';

/** One curve y = asymptote − Σ amplitude·exp(−s/timeConstant), s since the step; the shorter time constant first. */
export interface RiseCurve {
  /** Unit of y. */
  readonly asymptote: number;
  readonly terms: readonly RiseTerm[];
}

export interface RiseTerm {
  /** Unit of y: negative where the readings fall. */
  readonly amplitude: number;
  /** Unit of t. */
  readonly timeConstant: number;
}

export interface RangedTerm {
  readonly amplitude: Ranged;
  readonly timeConstant: Ranged;
}

/** What the readings of a step response bear, and what they leave open, at 95 %. */
export interface RiseProfile {
  /** Whether the readings bear two time constants. */
  readonly two: boolean;
  /** Whether they allow a straight line in place of the slower of two parts: then nothing tells where it ends. */
  readonly open: boolean;
  /** The best fit, of as many exponentials as the readings bear; where it is open, the slower one has at most thirty spans. */
  readonly best: RiseCurve;
  /**
   * Interval over all accepted curves with a slower part up to `mostRatio` times slower; where one exponential is enough, these have it
   * hidden below the scatter. Where it is open the far end is infinite.
   */
  readonly asymptote: Ranged;
  /** As many as the best fit has terms. Where the slower part may as well be a straight line, its far ends are infinite. */
  readonly terms: readonly RangedTerm[];
  /** Accepted curves that end, the best one first: for what else is read off a curve. */
  readonly curves: readonly RiseCurve[];
  /** (XᵀX)⁻¹ of the best fit over asymptote, amplitudes, time constants; null where a straight line is accepted too. */
  readonly inverse: readonly (readonly number[])[] | null;
  /** Unit of y, of single rows. */
  readonly residualDeviation: number;
  /** Of the intervals, 2 or more. */
  readonly dof: number;
  /** Rows that would say as much if their residuals were independent. */
  readonly effectiveCount: number;
  readonly rows: number;
}

export interface RiseProfileOptions {
  /** Instant of the step, unit of t; the first row's when left out. */
  readonly start?: number;
  /** Step of the readings, unit of y: what they cannot tell apart. 0 when left out. */
  readonly step?: number;
  /** How many times slower than the faster one a slower part may be. */
  readonly mostRatio?: number;
}

const PARAMETERS = 5;
/** The shortest time constant that can be told, in spacings of the readings. */
const SHORTEST = 0.5;
/** Likelihood ratio that a second exponential reaches by chance once in a thousand: χ² with two degrees of freedom, −2 ln 0.001. */
const BY_CHANCE = -2 * Math.log(0.001);
/** What a step of the readings leaves in a fit at least, as a standard deviation in steps. */
const STEP_SHARE = 0.15;
/** As in `fitCovariance`. */
const SMALLEST_CORRECTION = 0.2;
const FEWEST_DOF = 2;
/** A hidden part that counts for the time constant and the amplitude is slower by this at least, and makes this share of what is shown at most. */
const LEAST_RATIO = 2;
const MOST_HIDDEN = 0.3;
/** A case answers some ten times slower than its board; thirty leaves room. */
const MOST_RATIO = 30;

/**
 * One or two exponentials of a step response, with intervals by profile: the slower time constant is walked from two spacings of the
 * readings to thirty spans and to a straight line, everything else is fitted for each, and all fits with a sum of squares that chance
 * would reach at 95 % are accepted. So no lucky start is needed, intervals may be lopsided or open, and a slower part that the
 * readings do not exclude widens the asymptote's interval even where one exponential is enough.
 *
 * Two are borne where the second makes the likelihood ratio larger than chance would once in a thousand, on the effective number of
 * rows (`correlationTime` of the residuals).
 *
 * When: temperatures after the load went on or off, at constant load and ambient. The sensor's own offset is for the caller to add.
 * @param t instants, never decreasing, evenly spaced or nearly so (means in equal spans of time, some 120 of them). Unit: any.
 * @param y as many readings. Unit: any.
 * @returns the profile, or why there is none, without a full stop
 * @throws RangeError for unequal lengths, or a start that is not finite
 * Source: Golub & Pereyra, SIAM Journal on Numerical Analysis 10, 1973, 413–432 (variable projection); profile intervals: D. M. Bates
 *   and D. G. Watts, Nonlinear Regression Analysis and Its Applications, 1988, chapter 6 (from memory); the factor for what five
 *   parameters take out of their own residuals: as `fitCovariance`.
 * Cost: some 10 ms for 120 rows, however many readings these are means of.
 * @example
 * riseProfile(Float64Array.from({ length: 60 }, (_, k) => k), Float64Array.from({ length: 60 }, (_, k) => 10 - 4 * Math.exp(-k / 2) - 6 * Math.exp(-k / 20))).best.asymptote.toFixed(6) // '10.000000'
 * riseProfile([0, 1], [20, 30]) // { failed: '2 readings are too few, 7 are needed' }
 */
export function riseProfile(
  t: ArrayLike<number>,
  y: ArrayLike<number>,
  { start = t[0] ?? 0, step = 0, mostRatio = MOST_RATIO }: RiseProfileOptions = {},
): RiseProfile | { readonly failed: string } {
  const obstacle = stepObstacle(t, y, start, PARAMETERS);
  if (obstacle) return { failed: obstacle };
  const up = rises(y) ? 1 : -1;
  const data = dataOf(t, y, start, up);
  const near = riseStart(data.s, data.y);
  const one = near === null ? null : exponentialRise(data.s, data.y, [near]);
  const walk = riseWalk(data);
  const pair = bestOfWalk(data, walk);
  const better = pair && (!one || pair.rss < one.rss) ? pair : null;
  if (!one && !better) return { failed: 'no time constant fits the readings' };
  const noise = noiseOf(better ? residualsOf(data, better) : one!.residuals, step);
  if (noise.effectiveCount * Math.log(Math.max(noise.base, squaresAboutMean(data.y)) / noise.base) <= BY_CHANCE) {
    return { failed: 'no step stands out from the scatter' };
  }
  const two = better !== null && (!one || noise.effectiveCount * Math.log(Math.max(one.rss, noise.base) / noise.base) > BY_CHANCE);
  const found = { data, walk, noise, mostRatio };
  return turned(two ? profileOfTwo(found, better) : profileOfOne(found, one!), up);
}

/** How much chance there is in the residuals, and what it lets pass. */
interface Noise {
  /** Least sum of squares, made larger to what the readings' step leaves. */
  readonly base: number;
  /** Fits up to this sum of squares are accepted, … */
  readonly cut: number;
  /** … which is this much above the least. */
  readonly allowance: number;
  readonly residualDeviation: number;
  readonly dof: number;
  readonly effectiveCount: number;
  readonly rows: number;
}

function noiseOf(residuals: Float64Array, step: number): Noise {
  const rows = residuals.length;
  const rss = residuals.reduce((sum, value) => sum + value * value, 0);
  const base = Math.max(rss, rows * (STEP_SHARE * step) ** 2) || Number.MIN_VALUE;
  const { time, window } = correlationTime(residuals);
  const effectiveCount = rows / time;
  const dof = Math.max(FEWEST_DOF, (rows - PARAMETERS * time) / window);
  const correction = Math.max(SMALLEST_CORRECTION, 1 - (PARAMETERS * window) / rows);
  const allowance = (base * studentQuantile(0.975, dof) ** 2) / (effectiveCount * correction);
  const residualDeviation = Math.sqrt(rss / (rows - PARAMETERS));
  return { base, cut: rss + allowance, allowance, residualDeviation, dof, effectiveCount, rows };
}

/** What both kinds of profile are made from. */
interface Found {
  readonly data: RiseData;
  readonly walk: readonly RisePair[];
  readonly noise: Noise;
  readonly mostRatio: number;
}

function profileOfTwo({ data, walk, noise, mostRatio }: Found, least: RisePair): RiseProfile {
  const { cut } = noise;
  const fits = [...walk, least];
  const accepts = (pair: RisePair) => pair.rss <= cut && mayRise(pair, cut);
  const accepted = acceptedStretch(data, fits, accepts);
  const endless = accepted.some(({ slow }) => slow >= MOST_SPANS * data.span);
  const limited = acceptedStretch(
    data,
    fits,
    (pair) => accepts(pair) && (pair.slow <= mostRatio * pair.fast || isSlowMain(pair, data.span)),
  );
  const open = !limited.some(bothRise);
  const best = open ? least : limited.filter(bothRise).reduce((lowest, pair) => (pair.rss < lowest.rss ? pair : lowest));
  const all = [best, ...accepted.filter((pair) => Number.isFinite(pair.slow) && bothRise(pair))];
  const over = (value: number, range: (pair: RisePair) => Ranged): Ranged => unionOf(value, all.map(range));
  const without = (ends: boolean, range: Ranged): Ranged => (ends ? { ...range, high: Number.POSITIVE_INFINITY } : range);
  const ends = open ? accepted.filter(({ slow }) => Number.isFinite(slow)) : limited;
  const exact = exponentialRise(data.s, data.y, [best.fast, best.slow]);
  return {
    ...told(noise),
    two: true,
    open,
    best: curveOf(best),
    asymptote: without(
      open,
      unionOf(
        best.asymptote,
        [best, ...ends].map((pair) => asymptoteRange(pair, cut)),
      ),
    ),
    terms: [
      {
        amplitude: over(best.amplitudes[0], (pair) => amplitudeRange(pair, cut, 0)),
        timeConstant: over(best.fast, (pair) => fastRange(pair, cut)),
      },
      {
        amplitude: without(
          endless,
          over(best.amplitudes[1], (pair) => amplitudeRange(pair, cut, 1)),
        ),
        timeConstant: without(
          endless,
          over(best.slow, (pair) => ranged(pair.slow, 0)),
        ),
      },
    ],
    curves: [best, ...ends.filter(bothRise)].flatMap((pair) => curvesOf(data, pair, cut)),
    inverse: endless ? null : (exact?.inverse ?? null),
  };
}

function profileOfOne({ data, walk, noise, mostRatio }: Found, one: ExponentialRise): RiseProfile {
  const { cut, allowance } = noise;
  const hidden = acceptedStretch(
    data,
    walk.filter(({ slow }) => Number.isFinite(slow)),
    (pair) => pair.rss <= cut && mayRise(pair, cut) && pair.slow <= mostRatio * pair.fast,
  );
  const plain = (value: number, parameter: number) => ranged(value, Math.sqrt(allowance * one.inverse[parameter]![parameter]!));
  const [amplitude, timeConstant] = [one.amplitudes[0]!, one.timeConstants[0]!];
  const best: RiseCurve = { asymptote: one.asymptote, terms: [{ amplitude, timeConstant }] };
  const beside = hidden.filter((pair) => isMain(pair, data.span));
  return {
    ...told(noise),
    two: false,
    open: false,
    best,
    asymptote: unionOf(one.asymptote, [plain(one.asymptote, 0), ...hidden.map((pair) => asymptoteRange(pair, cut))]),
    terms: [
      {
        amplitude: unionOf(amplitude, [plain(amplitude, 1), ...beside.map((pair) => amplitudeRange(pair, cut, 0))]),
        timeConstant: unionOf(timeConstant, [plain(timeConstant, 2), ...beside.map((pair) => fastRange(pair, cut))]),
      },
    ],
    curves: [
      best,
      ...sidesOfOne(data, plain(timeConstant, 2)),
      ...hidden.filter(bothRise).flatMap((pair) => curvesOf(data, pair, cut)),
    ],
    inverse: one.inverse,
  };
}

/** Whether the slower part is the larger within the load: then the other one is a chip on its board, however much faster. */
function isSlowMain({ amplitudes, slow }: RisePair, span: number): boolean {
  return slow <= span && -amplitudes[1] * Math.expm1(-span / slow) > amplitudes[0];
}

/** Whether a hidden slower part leaves the faster one to be what the load shows. */
function isMain({ amplitudes, fast, slow }: RisePair, span: number): boolean {
  const shown = -amplitudes[1] * Math.expm1(-span / slow);
  return slow >= LEAST_RATIO * fast && shown > 0 && shown <= MOST_HIDDEN * (amplitudes[0] + shown);
}

function told({ residualDeviation, dof, effectiveCount, rows }: Noise) {
  return { residualDeviation, dof, effectiveCount, rows };
}

/** Whether the last third lies above the first tenth. */
function rises(y: ArrayLike<number>): boolean {
  const mean = (from: number, to: number) => {
    let sum = 0;
    for (let i = from; i < to; i++) sum += y[i]!;
    return sum / (to - from);
  };
  return mean(Math.floor((2 * y.length) / 3), y.length) >= mean(0, Math.max(1, Math.floor(y.length / 10)));
}

function dataOf(t: ArrayLike<number>, y: ArrayLike<number>, start: number, up: 1 | -1): RiseData {
  const s = Float64Array.from(t, (at) => at - start);
  const span = s[s.length - 1]! - s[0]!;
  return { s, y: Float64Array.from(y, (value) => up * value), span, shortest: (SHORTEST * span) / (s.length - 1) };
}

function squaresAboutMean(y: Float64Array): number {
  const mean = y.reduce((sum, value) => sum + value, 0) / y.length;
  return y.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

function residualsOf({ s, y }: RiseData, { asymptote, amplitudes, fast, slow }: RisePair): Float64Array {
  return y.map((value, i) => value - asymptote + amplitudes[0] * Math.exp(-s[i]! / fast) + amplitudes[1] * Math.exp(-s[i]! / slow));
}

function curveOf({ asymptote, amplitudes, fast, slow }: RisePair): RiseCurve {
  const terms = [
    { amplitude: amplitudes[0], timeConstant: fast },
    { amplitude: amplitudes[1], timeConstant: slow },
  ];
  return { asymptote, terms };
}

/** A fit's curve, and those with its faster constant as far to either side as is accepted. */
function curvesOf(data: RiseData, pair: RisePair, cut: number): RiseCurve[] {
  const { low, high } = fastRange(pair, cut);
  const sides = [low, high].flatMap((fast) => risePairAt(data, pair.slow, fast) ?? []);
  return [pair, ...sides].filter(bothRise).map(curveOf);
}

/** One exponential with its time constant as far to either side as is accepted. */
function sidesOfOne({ s, y }: RiseData, { low, high }: Ranged): RiseCurve[] {
  return [low, high].flatMap((timeConstant) => {
    if (!(timeConstant > 0)) return [];
    const decay = Float64Array.from(s, (at) => -Math.exp(-at / timeConstant));
    const fit = linearLeastSquares([new Float64Array(s.length).fill(1), decay], y);
    if (!fit) return [];
    const [asymptote, amplitude] = fit.parameters as [number, number];
    return [{ asymptote, terms: [{ amplitude, timeConstant }] }];
  });
}

/** The profile of the readings as they were, where they were turned over to rise. */
function turned(profile: RiseProfile, up: 1 | -1): RiseProfile {
  if (up > 0) return profile;
  const over = ({ value, low, high }: Ranged): Ranged => ({ value: -value, low: -high, high: -low });
  const curve = ({ asymptote, terms }: RiseCurve): RiseCurve => ({
    asymptote: -asymptote,
    terms: terms.map(({ amplitude, timeConstant }) => ({ amplitude: -amplitude, timeConstant })),
  });
  const flipped = (parameter: number) => parameter <= profile.terms.length;
  return {
    ...profile,
    best: curve(profile.best),
    curves: profile.curves.map(curve),
    asymptote: over(profile.asymptote),
    terms: profile.terms.map(({ amplitude, timeConstant }) => ({ amplitude: over(amplitude), timeConstant })),
    inverse: profile.inverse?.map((row, i) => row.map((value, j) => (flipped(i) === flipped(j) ? value : -value))) ?? null,
  };
}
