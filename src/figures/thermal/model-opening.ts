/** Since when a criterion of steady state holds on fitted curves: told where the step of a sensor hides it from the readings. */
import type { RiseCurve } from '../../statistics/rise-profile.ts';
import type { Rule } from './criteria.ts';
import type { Opening } from './opening.ts';

/** What a fit through the steps of a quiet sensor leaves in a judged change, in steps; in the distance from its end, too. */
const STEP_SHARE = 0.35;
const STEP_SHARE_OF_END = 0.5;
/** What a step response leaves out of a real device, as a share of the time, to each side. */
const MODEL_SHARE = 0.02;
/** Halvings that leave a time known to a millionth of the load. */
const HALVINGS = 24;
/** Width of a normal 95 % interval, in standard deviations. */
const WIDTH = 2 * 1.959964;

/**
 * When the criterion begins to hold, s since the load began, by the first of the curves; its interval reaches over all of them, and over limits
 * that are off by what the sensor's step leaves in a fit. Null where one of them does not settle within `lasted` seconds.
 * `curves`: the best one first; what they are left with only falls. `step`: that of the sensor, K.
 */
export function modelOpening(rule: Rule, curves: readonly RiseCurve[], step: number, lasted: number): Opening | null {
  const room = allowance(rule, step);
  const value = settlesAt(rule, curves[0]!, 0, lasted);
  const early = curves.map((curve) => settlesAt(rule, curve, room, lasted));
  const late = curves.map((curve) => settlesAt(rule, curve, -room, lasted));
  if (value === null || early.includes(null) || late.includes(null)) return null;
  const low = Math.max(0, Math.min(value, ...(early as number[])) - MODEL_SHARE * value);
  const high = Math.max(value, ...(late as number[])) + MODEL_SHARE * value;
  return { value, u: (high - low) / WIDTH, interval: [low, high] };
}

/** By how much the limit may be off, in its own unit. */
function allowance(rule: Rule, step: number): number {
  if (rule.kind === 'within') return STEP_SHARE_OF_END * step;
  return rule.kind === 'slope' ? (STEP_SHARE * step) / rule.window : STEP_SHARE * step;
}

/** First time from which a curve meets the criterion, its limit being raised by so much; null where it does not before the load ends. */
function settlesAt(rule: Rule, curve: RiseCurve, raised: number, lasted: number): number | null {
  const most = limitOf(rule, curve) + raised;
  const latest = latestStart(rule, lasted);
  if (!(most > 0) || latest < 0 || changeOf(rule, curve, latest) > most) return null;
  let [low, high] = [0, latest];
  if (changeOf(rule, curve, 0) <= most) high = 0;
  for (let turn = 0; turn < HALVINGS && high > low; turn++) {
    const middle = (low + high) / 2;
    if (changeOf(rule, curve, middle) > most) low = middle;
    else high = middle;
  }
  return rule.kind === 'slope' ? high + rule.window / 2 : high;
}

function limitOf(rule: Rule, { terms }: RiseCurve): number {
  if (rule.kind !== 'within' || rule.of === 'kelvin') return rule.most;
  return rule.most * Math.abs(terms.reduce((sum, { amplitude }) => sum + amplitude, 0));
}

/** Last time at which a window may begin so that the load still holds all of it. */
function latestStart(rule: Rule, lasted: number): number {
  if (rule.kind === 'within') return lasted;
  if (rule.kind !== 'readings') return lasted - rule.window;
  return Math.min(lasted - 2 * rule.spacing, lasted / (1 + 2 * rule.shareOfElapsed));
}

/** What the criterion judges, for a window that begins at t. */
function changeOf(rule: Rule, { terms }: RiseCurve, t: number): number {
  const sum = (of: (amplitude: number, timeConstant: number) => number) =>
    Math.abs(terms.reduce((total, { amplitude, timeConstant }) => total + of(amplitude, timeConstant), 0));
  const between = (from: number, to: number) =>
    sum((amplitude, tau) => -amplitude * Math.exp(-from / tau) * Math.expm1((from - to) / tau));
  switch (rule.kind) {
    case 'change':
      return between(t, t + rule.window);
    case 'slope':
      return sum((amplitude, tau) => amplitude * Math.exp(-t / tau) * slopeOf(rule.window / tau)) / rule.window;
    case 'readings': {
      const spacing = Math.max(rule.spacing, rule.shareOfElapsed * t);
      return between(t, t + (rule.judged === 'spread' ? 2 : 1) * spacing);
    }
    case 'within':
      return sum((amplitude, tau) => amplitude * Math.exp(-t / tau));
  }
}

/** Below this the closed form loses digits to a difference; its series is exact to 1e-7 there. */
const SHORT = 0.01;

/** Least-squares slope of 1 − exp(−x) over [0, w], times w: 6·(w − 2 + (w + 2)·exp(−w)) ÷ w². */
function slopeOf(w: number): number {
  return w < SHORT ? w * (1 - w / 2 + (3 * w * w) / 20) : (6 * (w - 2 + (w + 2) * Math.exp(-w))) / (w * w);
}
