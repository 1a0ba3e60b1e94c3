/** Closed forms of exact exponential steps: criteria of steady state, and the fit of the response. */
import { type RiseCurve, riseProfile } from '../../statistics/rise-profile.ts';
import { smoothingSpan } from '../smooth.ts';
import { evenCourse } from '../thermal/course.ts';
import { CRITERIA, type Criterion, type Rule } from '../thermal/criteria.ts';
import { holdsFrom, judge, windowOf } from '../thermal/judge.ts';
import { type Check, type CheckedValue, toDigits, within } from './check.ts';

/** T = 62 − 40·exp(−t/600): °C, K and s, a row a second for three hours. */
const END = { asymptote: 62, height: 40 };
const TAU = 600;
const ROW = 1;
const SPAN = 3 * 3600;
const rise = (t: number) => END.asymptote - END.height * Math.exp(-t / TAU);

export const ANALYTIC_CHECKS: readonly Check[] = [
  {
    id: 'steady-state-criteria',
    title: 'Time to steady state of one exact exponential step of 40 K with a time constant of 600 s, by every criterion',
    source: 'closed form of the step, smoothed as the figures smooth; each rule as its criterion names it',
    compare: () => CRITERIA.map(criterionCompared),
  },
  {
    id: 'step-response',
    title: 'Fit of exact exponential steps',
    source: 'closed form: T = 62 − 40·exp(−t/600), and T = 70 − 15·exp(−t/40) − 30·exp(−t/700)',
    compare: responses,
  },
  {
    id: 'step-fractions',
    title: 'Share of the step after 1, 3 and 5 fitted time constants, and settling times',
    source: '1 − exp(−k) and τ ln(1/p), as any textbook on linear systems tabulates them (from memory)',
    compare: fractions,
  },
];

/** A moving mean over the span makes the exponential higher by this factor: sum of a geometric series. */
function smoothed(span: number): number {
  const half = Math.floor(span / 2 / ROW + 1e-9);
  return Math.sinh(((half + 0.5) * ROW) / TAU) / ((2 * half + 1) * Math.sinh(ROW / 2 / TAU));
}

function criterionCompared({ name, rule }: Criterion): CheckedValue {
  const t = Float64Array.from({ length: SPAN / ROW + 1 }, (_, row) => row * ROW);
  const window = shortestWindow(rule);
  const span = smoothingSpan(ROW, window);
  const course = evenCourse({ t, readings: { y: t.map(rise) }, lasted: SPAN, length: SPAN, step: ROW }, window);
  const judged = judge(rule, course, END);
  const first = holdsFrom(judged.change, judged.most);
  const ours = first === null ? Number.NaN : judged.at[first]!;
  return within(`${name}, s`, closedForm(rule, END.height * smoothed(span)), ours, ROW, 'one row of the log, 1 s');
}

/** The window that the smoothing must be short of; criteria without one are averaged over 15 min. */
function shortestWindow(rule: Rule): number {
  return windowOf(rule, 0) || 900;
}

/** When a step of this height, from then on, changes no more than the rule allows. */
function closedForm(rule: Rule, height: number): number {
  const opens = (most: number, window: number) => TAU * Math.log((height * (1 - Math.exp(-window / TAU))) / most);
  switch (rule.kind) {
    case 'change':
      return opens(rule.most, rule.window);
    case 'slope':
      return TAU * Math.log(((height / TAU) * lineFactor(rule.window / 2 / TAU)) / rule.most);
    case 'within':
      return TAU * Math.log(height / (rule.of === 'step' ? rule.most * END.height : rule.most));
    case 'readings':
      return bisected((t) => {
        const spacing = Math.max(rule.spacing, rule.shareOfElapsed * t);
        return opens(rule.most, rule.judged === 'spread' ? 2 * spacing : spacing) - t;
      });
  }
}

/** A least-squares line over an exponential is steeper than the tangent at its middle by this factor; half width in time constants. */
function lineFactor(half: number): number {
  return (3 * (half * Math.cosh(half) - Math.sinh(half))) / half ** 3;
}

/** Zero of a function that falls from above to below it over the load. */
function bisected(of: (t: number) => number): number {
  let [low, high] = [0, SPAN];
  for (let turn = 0; turn < 60; turn++) {
    const middle = (low + high) / 2;
    if (of(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

const ONE = Float64Array.from({ length: 600 }, (_, row) => 5 * row);

/** The curve that the figures' own fit finds through exact readings. */
function fitted(exact: (t: number) => number): RiseCurve {
  const profile = riseProfile(ONE, ONE.map(exact));
  return 'failed' in profile ? { asymptote: Number.NaN, terms: [] } : profile.best;
}

function responses(): CheckedValue[] {
  const single = fitted(rise);
  const two = fitted((t) => 70 - 15 * Math.exp(-t / 40) - 30 * Math.exp(-t / 700));
  return [
    toDigits('asymptote, °C', '62', single.asymptote, 9),
    toDigits('height of the step, K', '40', single.terms[0]?.amplitude ?? Number.NaN, 9),
    toDigits('time constant, s', '600', single.terms[0]?.timeConstant ?? Number.NaN, 9),
    toDigits('of two time constants the faster, s', '40', two.terms[0]?.timeConstant ?? Number.NaN, 7),
    toDigits('of two time constants the slower, s', '700', two.terms[1]?.timeConstant ?? Number.NaN, 7),
    toDigits('asymptote of two exponentials, °C', '70', two.asymptote, 9),
  ];
}

function fractions(): CheckedValue[] {
  const { timeConstant, amplitude } = fitted(rise).terms[0] ?? { timeConstant: Number.NaN, amplitude: Number.NaN };
  const share = (times: number) => 100 * (1 - Math.exp(-(times * TAU) / timeConstant));
  return [
    toDigits('share after one time constant, %', '63.212056', share(1), 7),
    toDigits('share after three, %', '95.021293', share(3), 7),
    toDigits('share after five, %', '99.326205', share(5), 7),
    toDigits('time to within 3 K of the end, s', '1554.160299', timeConstant * Math.log(amplitude / 3), 9),
    toDigits('time to within 2 % of the step, s', '2347.213803', timeConstant * Math.log(50), 9),
  ];
}
