/** Rises of devices after a step of their load, without chance, and when each criterion of steady state begins to hold on them. */
import { CRITERIA, type Rule } from '../../src/figures/thermal/criteria.ts';

/** K over the start, t in s since the load began. */
export interface Curve {
  readonly name: string;
  readonly rise: (t: number) => number;
  /** Where it ends, K. */
  readonly end: number;
}

const sum =
  (...terms: readonly (readonly [number, number])[]) =>
  (t: number) =>
    terms.reduce((rise, [height, constant]) => rise + height * (1 - Math.exp(-t / constant)), 0);

/** Longest load that curves without a closed form are solved for, s. */
const LONGEST = 20_000;

/** Solves x' = slope(x) from 0 by the midpoint rule in steps of a second; straight lines between. */
function solved(slope: (x: number) => number): (t: number) => number {
  const x = new Float64Array(LONGEST + 2);
  for (let i = 1; i < x.length; i++) x[i] = x[i - 1]! + slope(x[i - 1]! + slope(x[i - 1]!) / 2);
  return (t) => {
    const i = Math.floor(t);
    return x[i]! + (x[i + 1]! - x[i]!) * (t - i);
  };
}

export const CURVES: readonly Curve[] = [
  { name: 'one exponential, 40 K, 300 s', rise: sum([40, 300]), end: 40 },
  { name: 'one exponential, 40 K, 600 s', rise: sum([40, 600]), end: 40 },
  { name: 'two exponentials, 35 K, 300 s and 5 K, 2400 s', rise: sum([35, 300], [5, 2400]), end: 40 },
  {
    name: 'power that grows with the temperature, by a quarter at the end',
    rise: solved((x) => (32 + 0.2 * x - x) / 300),
    end: 40,
  },
  { name: 'free convection, exponent 1.25', rise: solved((x) => (40 - 40 * Math.max(0, x / 40) ** 1.25) / 300), end: 40 },
];

/** Rows are a second apart where a truth is looked for. */
const truths = new Map<string, number | null>();

/** When a criterion begins to hold for good on a curve, under a load of that many seconds; null where it does not. */
export function settlesAt(curve: Curve, criterion: string, load: number): number | null {
  const key = `${curve.name}/${criterion}/${load}`;
  if (!truths.has(key)) truths.set(key, search(curve, CRITERIA.find(({ name }) => name === criterion)!.rule, load));
  return truths.get(key)!;
}

/** All curves climb, so that a change is that between the ends of a window and never grows again: the first time is looked for by halving. */
function search(curve: Curve, rule: Rule, load: number): number | null {
  const { window, change, most } = asked(curve, rule);
  let [low, high] = [0, load];
  const fits = (t: number) => t + window(t) <= load;
  while (!fits(high) && high > 0) high -= 1;
  if (change(high) > most) return null;
  if (change(low) <= most) return shift(rule);
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (change(middle) > most) low = middle;
    else high = middle;
  }
  return high + shift(rule);
}

/** A slope is reported for the middle of its line. */
function shift(rule: Rule): number {
  return rule.kind === 'slope' ? rule.window / 2 : 0;
}

function asked({ rise, end }: Curve, rule: Rule): { window: (t: number) => number; change: (t: number) => number; most: number } {
  switch (rule.kind) {
    case 'change':
      return { window: () => rule.window, change: (t) => rise(t + rule.window) - rise(t), most: rule.most };
    case 'slope':
      return { window: () => rule.window, change: (t) => slopeOf(rise, t, rule.window), most: rule.most };
    case 'readings': {
      const spacing = (t: number) => Math.max(rule.spacing, rule.shareOfElapsed * t);
      const over = (t: number) => rise(t + (rule.judged === 'spread' ? 2 : 1) * spacing(t)) - rise(t);
      return { window: (t) => 2 * spacing(t), change: over, most: rule.most };
    }
    case 'within':
      return { window: () => 0, change: (t) => end - rise(t), most: rule.of === 'step' ? rule.most * end : rule.most };
  }
}

/** Slope of the least-squares line over [t, t + window]. */
function slopeOf(rise: (t: number) => number, t: number, window: number): number {
  const n = 300;
  let [squares, products] = [0, 0];
  for (let k = 0; k <= n; k++) {
    const off = (k / n - 0.5) * window;
    squares += off * off;
    products += off * rise(t + window / 2 + off);
  }
  return products / squares;
}
