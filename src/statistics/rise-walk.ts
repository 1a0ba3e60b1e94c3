import { exponentialRise } from './exponential-rise.ts';
import { type RiseData, type RisePair, risePair, risePairAt } from './rise-pair.ts';
import { risePairStarts } from './rise-pair-starts.ts';

/** Slower time constants tried: neighbours differ by about a quarter. */
const GRID = 36;
/** The slowest of them, in spans; beyond, a straight line stands for them all. */
export const MOST_SPANS = 30;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Turns that leave the best slower constant known to a part in a hundred, from where Gauss–Newton ends the search. */
const SECTIONS = 12;
/** Halvings that leave the end of an accepted stretch known to a part in a thousand of the step of the grid. */
const HALVINGS = 10;

/**
 * Fits of two exponential rises, one for each of 36 slower time constants from two spacings of the readings to thirty spans, and one
 * with a straight line in place of the slower part (first).
 *
 * When: inside `riseProfile`.
 * @returns those that could be fitted, the slowest first; their parts may be of unlike sign
 * Source: Golub & Pereyra, SIAM Journal on Numerical Analysis 10, 1973, 413–432, for the projection; profiles: common practice.
 * Cost: about 150 linear fits of four columns.
 * @example
 * riseWalk({ s: Float64Array.from({ length: 13 }, (_, k) => k), y: Float64Array.from({ length: 13 }, (_, k) => 10 - 4 * Math.exp(-k) - 6 * Math.exp(-k / 5)), span: 12, shortest: 0.5 })[0].slow // Infinity
 */
export function riseWalk(data: RiseData): RisePair[] {
  const [low, high] = [4 * data.shortest, MOST_SPANS * data.span];
  const slows = Array.from({ length: GRID }, (_, k) => high * (low / high) ** (k / (GRID - 1)));
  const all = [Number.POSITIVE_INFINITY, ...slows];
  const starts = risePairStarts(data, all);
  return all.flatMap((slow, k) => (starts[k] === null ? [] : (risePair(data, slow, starts[k]!) ?? [])));
}

/**
 * Both parts rise, as the response to one step does.
 * @example
 * bothRise({ amplitudes: [3, 1] }) // true
 * bothRise({ amplitudes: [3, -1] }) // false
 */
export function bothRise({ amplitudes }: RisePair): boolean {
  return amplitudes[0] > 0 && amplitudes[1] > 0;
}

/**
 * The fit with the least sum of squares of all that end and whose parts both rise: golden sections about the best of the walk, then
 * Gauss–Newton. Where a straight line would be best it is that of thirty spans, which is the same curve.
 * @example
 * bestOfWalk({ s: Float64Array.from({ length: 13 }, (_, k) => k), y: Float64Array.from({ length: 13 }, (_, k) => 10 - 4 * Math.exp(-k) - 6 * Math.exp(-k / 5)), span: 12, shortest: 0.5 }, [{ amplitudes: [4, 6], fast: 1, slow: 6, rss: 1 }]).slow.toFixed(6) // '5.000000'
 * bestOfWalk({ s: Float64Array.from({ length: 13 }, (_, k) => k), y: Float64Array.from({ length: 13 }, (_, k) => 10 - 4 * Math.exp(-k) - 6 * Math.exp(-k / 5)), span: 12, shortest: 0.5 }, []) // null
 */
export function bestOfWalk(data: RiseData, walk: readonly RisePair[]): RisePair | null {
  const rising = walk.filter((pair) => Number.isFinite(pair.slow) && bothRise(pair));
  if (rising.length === 0) return null;
  const near = rising.reduce((least, pair) => (pair.rss < least.rss ? pair : least));
  const closer = sections(data, near);
  const exact = exponentialRise(data.s, data.y, [closer.fast, closer.slow]);
  const [fast, slow] = exact?.timeConstants ?? [];
  const refined = exact && fast! < slow! ? risePairAt(data, slow!, fast!) : null;
  return refined && bothRise(refined) && refined.rss <= closer.rss ? refined : closer;
}

function sections(data: RiseData, near: RisePair): RisePair {
  const width = Math.log((MOST_SPANS * data.span) / (4 * data.shortest)) / (GRID - 1);
  let [low, high] = [Math.log(near.slow) - width, Math.log(near.slow) + width];
  const at = (log: number): RisePair | null => {
    const pair = risePair(data, Math.exp(log), near.fast);
    return pair && bothRise(pair) ? pair : null;
  };
  const rssOf = (pair: RisePair | null) => pair?.rss ?? Number.POSITIVE_INFINITY;
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [left, right] = [at(a), at(b)];
  for (let turn = 0; turn < SECTIONS; turn++) {
    if (rssOf(left) <= rssOf(right)) {
      [high, b, right] = [b, a, left];
      a = high - GOLDEN * (high - low);
      left = at(a);
    } else {
      [low, a, left] = [a, b, right];
      b = low + GOLDEN * (high - low);
      right = at(b);
    }
  }
  return [left, right].reduce<RisePair>((least, pair) => (pair && pair.rss < least.rss ? pair : least), near);
}

/**
 * All fits that `accepts` lets pass: those given, the ends of the stretches between them, and one half way to each end.
 * @example
 * acceptedStretch({ s: Float64Array.from({ length: 13 }, (_, k) => k), y: Float64Array.from({ length: 13 }, (_, k) => 10 - 4 * Math.exp(-k) - 6 * Math.exp(-k / 5)), span: 12, shortest: 0.5 }, [{ fast: 1, slow: 5 }, { fast: 1, slow: 8 }], ({ slow }) => slow <= 6).at(-2).slow.toFixed(1) // '6.0'
 */
export function acceptedStretch(data: RiseData, fits: readonly RisePair[], accepts: (pair: RisePair) => boolean): RisePair[] {
  const sorted = [...fits].sort((a, b) => a.slow - b.slow);
  return sorted.flatMap((pair, k) => {
    if (!accepts(pair)) return [];
    const outside = [sorted[k - 1], sorted[k + 1]].filter((other) => other && Number.isFinite(other.slow) && !accepts(other));
    return [pair, ...(Number.isFinite(pair.slow) ? outside.flatMap((other) => towards(data, pair, other!, accepts)) : [])];
  });
}

/** The last accepted fit from an accepted one towards a refused one, and one half way to it. */
function towards(data: RiseData, from: RisePair, to: RisePair, accepts: (pair: RisePair) => boolean): RisePair[] {
  const at = (share: number) => risePair(data, from.slow ** (1 - share) * to.slow ** share, from.fast);
  let [inside, low, high] = [null as RisePair | null, 0, 1];
  for (let turn = 0; turn < HALVINGS; turn++) {
    const pair = at((low + high) / 2);
    if (pair && accepts(pair)) [inside, low] = [pair, (low + high) / 2];
    else high = (low + high) / 2;
  }
  return [inside, inside && at(low / 2)].filter((pair) => pair !== null && accepts(pair)) as RisePair[];
}
