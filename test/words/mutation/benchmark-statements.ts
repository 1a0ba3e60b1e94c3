/**
 * Numbers with units of benchmarks, in lists, in shares and over groups, for the mutation test. What each allows is written out here by
 * hand. They stand below the demonstration's note, which has four runs that were compared and two others.
 */
import { type ClaimCase, one, type Statement } from './statements.ts';

const { POSITIVE_INFINITY: ABOVE, NEGATIVE_INFINITY: BELOW } = Number;
const SORT = '"ledger-sort-all-cores"';
const GRID = '"grid-relaxation-all-cores"';
const SIEVE = '"text-sieve-one-core"';
const COPY = '"wide-copy"';

/** A figure of one run over that of another. */
function over(
  words: string,
  left: string,
  right: string,
  [lower, upper]: readonly [number, number],
  scale = 1,
  shift = 0,
): Statement {
  return {
    words,
    is: `${left} / ${right}`,
    at: (v) => (v(left) / v(right)) * scale + shift,
    lower,
    upper,
    lowerClosed: true,
    upperClosed: false,
    solve: {
      [left]: (target, v) => ((target - shift) / scale) * v(right),
      [right]: (target, v) => v(left) / ((target - shift) / scale),
    },
  };
}

export const BENCHMARKS: readonly Statement[] = [
  one('292 MB/s', `fast.score.${SIEVE}`, ['[', 291.5, 292.5, ')']),
  one('just under 234 MB/s', `rated.score.${SIEVE}`, ['[', 233.5, 234, ')']),
  one('at least 100 sweeps/s', `fast.score.${GRID}`, ['[', 100, ABOVE, ')']),
  one('under 81 sweeps/s', `rated.score.${GRID}`, ['(', BELOW, 81, ')']),
  one('8.3 GB/s', `fast.score.${COPY}`, ['[', 8.25, 8.35, ')']),
  one('between 45 and 46 seconds', `fast.score.${SORT}`, ['[', 45, 46, ']']),
  one('54.5 s', `rated.score.${SORT}`, ['[', 54.45, 54.55, ')']),
  one('12.7 sweeps/J', `rated.score_per_watt.${GRID}`, ['[', 12.65, 12.75, ')']),
  one('8 percent faster', `steps.speedup.brisk.${SORT}`, ['[', 7.5, 8.5, ')'], 100, -100),
  one('82 percent', `steps.clock_independent_share.${COPY}`, ['[', 81.5, 82.5, ')'], 100),
  one('a fifth less', 'steps.performance_per_watt.quick', ['[', 0.15, 0.25, ')'], -1, 1),
  over('a quarter more', `fast.score.${GRID}`, `rated.score.${GRID}`, [0.1875, 0.3125], 1, -1),
  over('16 percent less', `fast.score.${SORT}`, `rated.score.${SORT}`, [15.5, 16.5], -100, 100),
];

/** Numbers of a list that share the unit of the last, and the last. */
export const LISTED: readonly (Statement & { readonly unit?: string })[] = [
  { ...one('59.4', 'rated.steady_temperature', ['[', 59.35, 59.45, ')']), unit: '°C' },
  { ...one('65', 'brisk.steady_temperature', ['[', 64.5, 65.5, ')']), unit: '°C' },
  one('79 °C', 'quick.steady_temperature', ['[', 78.5, 79.5, ')']),
];

const PEAKS = ['rated', 'brisk', 'quick', 'fast'].map((alias) => `${alias}.peak_temperature`);
const SPOTS = ['"lid-front-edge"', '"network-socket"', 'underside'].map((spot) => `fast.surface.${spot}`);

/** Conditions over groups, each false where one member is. Peaks are limits of readings, so that a hair cannot be told. */
export const GROUPS: readonly (ClaimCase & { readonly is: string })[] = [
  {
    words: 'none of the four got to ninety degrees',
    is: 'none [rated brisk quick fast].peak_temperature >= 90 °C',
    rests: PEAKS,
    cases: PEAKS.flatMap((peak) => [
      [peak, () => 60, false] as const,
      [peak, () => 95, true] as const,
      [peak, () => 120, true] as const,
    ]),
  },
  {
    words: 'the fast one draws the most',
    is: 'fast.load_power is largest of [rated brisk quick fast].load_power',
    rests: ['rated', 'brisk', 'quick', 'fast'].map((alias) => `${alias}.load_power`),
    cases: [
      ['fast.load_power', () => 30, false],
      ['fast.load_power', () => 1, true],
      ['quick.load_power', () => 30, true],
      ['quick.load_power', () => 2, false],
      ['rated.load_power', () => 30, true],
      ['brisk.load_power', () => 40, true],
    ],
  },
  {
    words: 'every spot of the lid is below seventy degrees',
    is: 'all fast.surface.* < 70 °C',
    rests: SPOTS,
    cases: SPOTS.flatMap((spot) => [[spot, () => 30, false] as const, [spot, () => 80, true] as const]),
  },
  {
    words: 'the sort is the quickest at the fast setting',
    is: `fast.score.${SORT} is smallest of [rated brisk quick fast].score.${SORT}`,
    rests: ['rated', 'brisk', 'quick', 'fast'].map((alias) => `${alias}.score.${SORT}`),
    cases: [
      [`fast.score.${SORT}`, () => 20, false],
      [`fast.score.${SORT}`, () => 60, true],
      [`rated.score.${SORT}`, () => 20, true],
      [`quick.score.${SORT}`, () => 20, true],
      [`quick.score.${SORT}`, () => 90, false],
    ],
  },
];
