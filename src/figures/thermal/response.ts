/** The step response of a temperature to its load: one or two time constants, their parts of the step, and where it ends. */
import type { Part } from '../../quantities/quantity.ts';
import { cholesky } from '../../statistics/cholesky.ts';
import { type RiseCurve, type RiseProfile, type RiseTerm, riseProfile } from '../../statistics/rise-profile.ts';
import { type Ranged, unionOf } from '../../statistics/rise-ranges.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { isReason, type Reason, tooShort } from '../absent.ts';
import { duration, plain } from '../in-words.ts';
import { addressOf, type Soak } from '../soak.ts';
import { stepOf } from '../sources.ts';
import { ambientChannel } from './ambient.ts';
import { bendOf, bentReason, endsBoost } from './bent.ts';
import { type Bins, binsOf, meanOfBin } from './bins.ts';
import { driftOf, lagOf, type Moved } from './drift.ts';
import { overFeltRoom } from './felt-room.ts';
import type { LoadSeries } from './load-series.ts';
import { mainOf, restOf } from './rest.ts';

/** A parameter of the fit with its 95 % interval and what makes it uncertain. */
export interface Estimate extends Ranged {
  /** Of the fit alone. */
  readonly fit: readonly Part[];
  /** Of what the fit takes for granted. */
  readonly more: readonly Part[];
}

/** Where the response ends. */
export interface ResponseEnd extends Estimate {
  /**
   * null: it is told. `open`: a slower part is seen, but not where it ends. `hidden`: the readings leave room for a slower part, so that
   * only the lower end says something, and the value holds if none is hidden.
   */
  readonly untold: 'open' | 'hidden' | null;
}

export interface Response {
  /** s, of the main part: the larger one within the load. */
  readonly timeConstant: number;
  /** Where the rise (or the temperature, without an ambient channel) would end, by the best fit. */
  readonly asymptote: number;
  /** Asymptote less the fitted start, K. */
  readonly height: number;
  /** How many exponentials the readings bear. */
  readonly constants: 1 | 2;
  /** The fitted curve: asymptote − Σ amplitude·exp(−t/timeConstant), t in s since the load began; the faster part first. */
  readonly terms: readonly RiseTerm[];
  /** Which of the terms is the main part. */
  readonly main: number;
  /** As many as terms. A slower part may have no upper ends. */
  readonly parts: readonly { readonly amplitude: Estimate; readonly timeConstant: Estimate }[];
  readonly end: ResponseEnd;
  /** All curves that the readings allow, the best one first. */
  readonly curves: readonly RiseCurve[];
  /** What was fitted: the rise over the ambient as the device felt it, else that over the ambient of the moment, or the temperature. */
  readonly series: LoadSeries;
  /** Whether a channel shows what the load was: else a faster part may as well be a boost. */
  readonly seen: boolean;
  /** Whether a slower second part is more than what a boost that nobody saw may feign. */
  readonly slowerBorne: boolean;
  /** s: so much of the load, at its beginning, does not follow the rest, and was left out of the fit; amplitudes then say nothing. */
  readonly skipped: number;
}

/** It is no fit when the residuals are above this share of the step … */
const WORST_RESIDUAL = 0.05;
/** … or when they are worth fewer independent readings than this, being above this share of the step, and above half a step of the sensor. */
const FEWEST_EFFECTIVE = 6;
const STRUCTURE = 0.005;
/** The load must have lasted this many time constants, of the larger part; … */
const LEAST_SPAN = 2;
/** … and this many for an end that a slower part may still move. */
const LEAST_SPAN_OF_END = 8;
/** From so many on, readings bear a slower part rather than a smaller faster one: both can no longer be there, and a slower one be hidden. */
const LEAST_SPAN_OF_PAIR = 5;
/** An end whose interval is this share of the step to each side, or wider, is none. */
const WIDEST_END = 0.3;
/** A time constant or amplitude that is known no better than this share of itself is none. */
const WIDEST = 2 / 3;
/** A faster part is over after this many of its time constants. */
const OVER = 4;

/**
 * Fits the response to the beginning of a phase: of the load, or of the cool-down after it. The load is taken as constant, but for a boost at
 * its beginning: whether it was is for the caller to tell. `seen`: s until which it was seen to change; null where nothing shows what it was.
 */
export function responseOf(
  soak: Soak,
  read: LoadSeries,
  index: number,
  seen: number | null,
  root: 'response' | 'cooling' = 'response',
): Response | Reason {
  const felt = overFeltRoom(soak, read);
  const series = felt ?? read;
  const stretch = series.phase.name === 'load' ? 'load' : `${series.phase.name} phase`;
  const step = stepOf(soak.context, series.channel);
  const bend = root === 'response' ? bendOf(series, step) : null;
  if (bend && !endsBoost(bend, series, seen)) return bentReason(bend, series, seen !== null, ambientChannel(soak) !== null);
  const { skipped, profile, rivals, slowerBorne } = restOf(series, step, seen, bend?.to);
  const bins = binsOf(series, skipped, series.lasted);
  const { name } = series.channel;
  if ('failed' in profile) return { absent: 'no-fit', why: `No step response can be fitted to ${name}: ${profile.failed}.` };
  const height = profile.best.terms.reduce((sum, { amplitude }) => sum + amplitude, 0);
  if (isMisfit(profile, height, step)) {
    const off = plain(profile.residualDeviation);
    return {
      absent: 'no-fit',
      why: `The course of ${name} in the ${stretch} is not that of a step response: it lies ${off} K off the nearest one.`,
    };
  }
  const main = profile.best.terms[mainOf(profile.best, series.lasted)]!.timeConstant;
  if (series.lasted < LEAST_SPAN * main) {
    const [lasted, needed] = [duration(series.lasted), duration(LEAST_SPAN * main)];
    return tooShort(
      `The ${stretch} lasted ${lasted}; with a time constant near ${duration(main)} a fit needs ${needed}.`,
      LEAST_SPAN * main,
    );
  }
  const alone = profile.terms[0]!.timeConstant;
  if (!profile.two && alone.high - alone.value > WIDEST * alone.value) {
    return { absent: 'no-fit', why: hiddenBy(profile, series.lasted - skipped, step, name) };
  }
  const drift = felt ? lagOf(bins, binsOf(read, skipped, read.lasted), profile) : driftOf(soak, bins, profile);
  const later = profile.two && mainOf(profile.best, series.lasted) === 1 ? afterFaster(profile.best, bins, step) : null;
  return toResponse(soak, profile, endRange(profile, later, rivals, series.lasted), drift, {
    later,
    height,
    series,
    skipped,
    rivals,
    seen: seen !== null,
    slowerBorne,
    name: addressOf(root, series.channel, index),
  });
}

/** Residuals that are worth fewer independent readings than this share of them come and go in waves. */
const WAVES = 1 / 3;

/** Why a step that lasted long enough does not tell its time constant. */
function hiddenBy({ residualDeviation, effectiveCount, rows }: RiseProfile, lasted: number, step: number, name: string): string {
  if (effectiveCount >= WAVES * rows || residualDeviation <= step / 2)
    return `Noise hides the course of ${name}: too little of its step stands out to tell the time constant.`;
  const each = duration(lasted / effectiveCount);
  return `The readings of ${name} lie ${plain(residualDeviation)} K off a step response, for ${each} at a time, as where the room or the load changes. That hides the time constant.`;
}

function isMisfit({ residualDeviation, effectiveCount }: RiseProfile, height: number, step: number): boolean {
  const share = residualDeviation / Math.abs(height);
  return share > WORST_RESIDUAL || (effectiveCount < FEWEST_EFFECTIVE && share > STRUCTURE && residualDeviation > step / 2);
}

/** Where the response ends, and whether that is told. */
function endRange(
  profile: RiseProfile,
  later: Later | null,
  rivals: readonly RiseProfile[],
  lasted: number,
): { readonly range: Ranged; readonly untold: ResponseEnd['untold'] } {
  const { best, asymptote, open } = profile;
  const main = mainOf(best, lasted);
  const slower = profile.two && main === 0 ? profile.terms[1]!.timeConstant : null;
  if (open || (slower && !isTold(slower) && lasted < LEAST_SPAN * slower.low)) {
    // A part that is seen to be longer than the load may be a load that creeps: the temperature surely got as far as it did, no further.
    const reached = asymptote.value - stillRising(best.terms, lasted);
    return { range: { ...asymptote, low: Math.min(asymptote.low, reached) }, untold: 'open' };
  }
  const height = best.terms.reduce((sum, { amplitude }) => sum + Math.abs(amplitude), 0);
  const others = later ? [later] : profile.two ? rivals.filter((rival) => !rival.open) : [];
  const range = unionOf(asymptote.value, [asymptote, ...others.map((other) => other.asymptote)]);
  const short = profile.two && main === 0 && lasted < LEAST_SPAN_OF_END * best.terms[0]!.timeConstant;
  const wide = !(range.high - range.low <= 2 * WIDEST_END * height);
  return { range, untold: short || wide ? 'hidden' : null };
}

/** What the readings say by themselves after a faster part is over. */
interface Later {
  readonly asymptote: Ranged;
  readonly amplitude: Ranged;
  readonly timeConstant: Ranged;
}

const UNTOLD: Ranged = { value: Number.NaN, low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

/**
 * The response where two parts are borne and the slower one is the larger, from the readings after the faster one is over: these may still hide a
 * part that is slower than both, which the faster one left no room for.
 */
function afterFaster({ terms }: RiseCurve, { t, y }: Bins, step: number): Later {
  const from = t.findIndex((at) => at >= OVER * terms[0]!.timeConstant);
  const rest = from < 0 ? null : riseProfile(t.subarray(from), y.subarray(from), { start: 0, step });
  if (!rest || 'failed' in rest) return { asymptote: UNTOLD, amplitude: UNTOLD, timeConstant: UNTOLD };
  const main = mainOf(rest.best, t[t.length - 1]!);
  return { asymptote: rest.asymptote, amplitude: rest.terms[main]!.amplitude, timeConstant: ofMain(rest, main, t[t.length - 1]!) };
}

/**
 * Standard uncertainty, as a share, of what the model leaves out: leakage that rises with the temperature makes a device slower, free
 * convection makes it faster, so that no single time constant is exact. Common practice, no source; proved on simulated devices.
 */
const MODEL_SHARE = 0.0125;
/** The same of what the fitted end lies beyond the load. */
const MODEL_SHARE_BEYOND = 0.1;

interface Made {
  readonly later: Later | null;
  readonly height: number;
  readonly series: LoadSeries;
  readonly skipped: number;
  readonly rivals: readonly RiseProfile[];
  readonly seen: boolean;
  readonly slowerBorne: boolean;
  readonly name: string;
}

function toResponse(
  soak: Soak,
  profile: RiseProfile,
  { range, untold }: ReturnType<typeof endRange>,
  drift: Moved | null,
  { later, height, series, skipped, rivals, seen, slowerBorne, name }: Made,
): Response {
  const root = `run:${soak.context.run}/${name}`;
  const { best, terms, two, dof } = profile;
  const factor = studentQuantile(0.975, dof);
  const rows = profile.inverse ? correlated(profile.inverse) : null;
  const alone = (id: string, title: string, share: number): Part => ({ source: { id: `${root}/${id}`, title, dof: null }, share });
  const estimate = (value: Ranged, parameter: number, model: number): Estimate => {
    const u = Math.max(value.high - value.value, value.value - value.low) / factor;
    const shares = rows?.[parameter] ?? Array.from({ length: parameter + 1 }, (_, k) => (k === parameter ? 1 : 0));
    const fit = Number.isFinite(u)
      ? shares.map((share, k) => ({
          source: {
            id: `${root}/${k + 1}`,
            title: `fit of the ${name.startsWith('cooling') ? 'cool-down' : 'step response'} in ${soak.context.run}`,
            dof,
          },
          share: share * u,
        }))
      : [];
    return {
      ...value,
      fit,
      more: [
        ...(drift ? [alone(drift.id, drift.title, drift.by[parameter]!)] : []),
        alone(`model-${parameter + 1}`, 'what a step response leaves out of a real device', model),
      ],
    };
  };
  const count = best.terms.length;
  const beyond = stillRising(best.terms, series.lasted);
  const unbin = (timeConstant: number) => 1 / meanOfBin(series, series.lasted - skipped, timeConstant);
  const unbinned = best.terms.map(({ timeConstant }) => unbin(timeConstant));
  const scaled = ({ value, low, high }: Ranged, by: number): Ranged => ({ value: value * by, low: low * by, high: high * by });
  const main = mainOf(best, series.lasted);
  const mainConstant = (rival: RiseProfile) => rival.terms[mainOf(rival.best, series.lasted)]!.timeConstant;
  const bent = series.lasted < LEAST_SPAN_OF_PAIR * best.terms[main]!.timeConstant ? later : null;
  return {
    timeConstant: best.terms[main]!.timeConstant,
    main,
    asymptote: best.asymptote,
    height,
    constants: two ? 2 : 1,
    terms: best.terms.map(({ amplitude, timeConstant }, k) => ({ amplitude: amplitude * unbinned[k]!, timeConstant })),
    parts: terms.map((term, k) => ({
      amplitude: estimate(
        scaled(k === main ? withLater(term.amplitude, bent?.amplitude) : term.amplitude, unbinned[k]!),
        1 + k,
        MODEL_SHARE * term.amplitude.value,
      ),
      timeConstant: estimate(
        k === main
          ? withLater(withRivals(ofMain(profile, main, series.lasted), rivals, mainConstant), bent?.timeConstant)
          : withRivals(term.timeConstant, rivals, (rival) => rival.terms[k]?.timeConstant),
        1 + count + k,
        MODEL_SHARE * term.timeConstant.value,
      ),
    })),
    // As far as the temperature got, it got without any model.
    end: { ...estimate(range, 0, MODEL_SHARE_BEYOND * beyond), ...(untold === 'open' ? { more: [] } : {}), untold },
    curves: profile.curves.map((curve) => ({
      asymptote: curve.asymptote,
      terms: curve.terms.map(({ amplitude, timeConstant }) => ({ amplitude: amplitude * unbin(timeConstant), timeConstant })),
    })),
    series,
    seen,
    slowerBorne,
    skipped,
  };
}

/** Time constant of the main part, over all curves that the readings allow: in some of them the other part may be the larger one. */
function ofMain({ two, terms, curves }: RiseProfile, main: number, lasted: number): Ranged {
  const own = terms[main]!.timeConstant;
  const others = two ? curves.filter((curve) => mainOf(curve, lasted) !== main) : [];
  return unionOf(own.value, [own, ...others.map((curve) => exactly(curve.terms[mainOf(curve, lasted)]!.timeConstant))]);
}

function exactly(value: number): Ranged {
  return { value, low: value, high: value };
}

/** An interval that reaches over those of fits that leave out more of the beginning, where they may be of the same part. */
function withRivals(own: Ranged, rivals: readonly RiseProfile[], of: (rival: RiseProfile) => Ranged | undefined): Ranged {
  const others = rivals.map(of).filter((other) => other !== undefined);
  return unionOf(own.value, [own, ...others.filter((other) => isTold(other) && own.low <= other.high && own.high >= other.low)]);
}

function withLater(own: Ranged, later: Ranged | undefined): Ranged {
  return later ? unionOf(own.value, [own, later]) : own;
}

/** Rows of the Cholesky factor, each of length 1: how parameters of one fit share their errors. */
function correlated(inverse: readonly (readonly number[])[]): number[][] {
  return cholesky(inverse).map((row) => {
    const length = Math.hypot(...row);
    return row.map((share) => share / length);
  });
}

/** Whether a part's time constant and amplitude are told well enough to be published. */
export function isTold({ value, low, high }: Ranged): boolean {
  return Math.max(high - value, value - low) <= WIDEST * Math.abs(value);
}

/** How much of the parts is still to come after so many seconds. */
function stillRising(terms: readonly RiseTerm[], lasted: number): number {
  return terms.reduce((sum, { amplitude, timeConstant }) => sum + amplitude * Math.exp(-lasted / timeConstant), 0);
}

export function isResponse(value: Response | Reason): value is Response {
  return !isReason(value);
}
