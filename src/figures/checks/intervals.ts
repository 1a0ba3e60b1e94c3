/** Student's factors, intervals of means, and ratios, against tables and books. */
import { multiply, subtract } from '../../quantities/arithmetic.ts';
import { independent } from '../../quantities/uncertainty.ts';
import { geometricMean } from '../../statistics/geometric-mean.ts';
import { mean } from '../../statistics/mean.ts';
import { quantile } from '../../statistics/quantile.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { welch } from '../../statistics/welch.ts';
import { asPrinted, type Check, type CheckedValue, toDigits } from './check.ts';
import { got, source, u } from './gum.ts';
import { AUTO83B, ZARR13 } from './nist-sets.ts';

const HANDBOOK = 'NIST/SEMATECH e-Handbook of Statistical Methods';
const DATAPLOT = 'data as in the NIST Dataplot repository; values as printed in the manual of Boost.Math, which cites the page';

/** JCGM 100:2008, Table G.2: shares in per cent, and rows of factors by degrees of freedom. */
const SHARES = [68.27, 90, 95, 95.45, 99, 99.73];
const TABLE_G2: readonly (readonly [number, readonly string[]])[] = [
  [1, ['1.84', '6.31', '12.71', '13.97', '63.66', '235.78']],
  [5, ['1.11', '2.02', '2.57', '2.65', '4.03', '5.51']],
  [10, ['1.05', '1.81', '2.23', '2.28', '3.17', '3.96']],
  [20, ['1.03', '1.72', '2.09', '2.13', '2.85', '3.42']],
  [50, ['1.01', '1.68', '2.01', '2.05', '2.68', '3.16']],
];

/** Student's t for p = 0.975, as SciPy 1.17.1 and the npm package @stdlib/stats-base-dists-t-quantile both give it. */
const T_975: readonly (readonly [number, string])[] = [
  [1, '12.706204736174694'],
  [2, '4.302652729749462'],
  [5, '2.570581835636315'],
  [10, '2.228138851986274'],
  [30, '2.042272456301238'],
];

/** Null & Lobur: seconds of five programs on three systems. */
const SECONDS = { a: [50, 200, 250, 400, 5000], b: [100, 400, 500, 800, 4100], c: [500, 600, 500, 800, 3500] };

export const INTERVAL_CHECKS: readonly Check[] = [
  {
    id: 'student-table',
    title: 'Student factors of GUM Table G.2',
    source: 'JCGM 100:2008 (GUM), Table G.2 (values as printed; layout from memory)',
    compare: () => TABLE_G2.flatMap(([dof, row]) => row.map((printed, k) => factorOf(dof, SHARES[k]!, printed))),
  },
  {
    id: 'student-quantiles',
    title: 'Student quantiles for intervals of 95 %',
    source: 'SciPy 1.17.1, scipy.stats.t.ppf; the npm package @stdlib/stats-base-dists-t-quantile 0.2.3 gives the same',
    compare: () =>
      T_975.map(([dof, printed]) => toDigits(`p = 0.975, ${dof} degrees of freedom`, printed, studentQuantile(0.975, dof), 12)),
  },
  {
    id: 'handbook-mean',
    title: 'Interval of a mean: heat-flow meter, 195 readings',
    source: `${HANDBOOK}, 1.3.5.2; ${DATAPLOT}`,
    compare: meanInterval,
  },
  {
    id: 'handbook-welch',
    title: 'Difference of two means with unequal spreads: miles per gallon of 249 and 79 cars',
    source: `${HANDBOOK}, 1.3.5.3; ${DATAPLOT}`,
    compare: () => {
      const found = welch(AUTO83B.us, AUTO83B.japan);
      return [asPrinted('t', '-12.946', found.t), asPrinted('degrees of freedom', '136.87', found.dof)];
    },
  },
  {
    id: 'geometric-means',
    title: 'Geometric mean of ratios: three systems, two references',
    source:
      'L. Null and J. Lobur, The Essentials of Computer Organization and Architecture, Tables 10.4 and 10.5, as excerpted on a public study site',
    compare: () => [
      asPrinted('system A, relative to B', '1.6733', geometricMean(ratios(SECONDS.b, SECONDS.a))),
      asPrinted('system C, relative to B', '0.6898', geometricMean(ratios(SECONDS.b, SECONDS.c))),
      asPrinted('system A, relative to C', '2.4258', geometricMean(ratios(SECONDS.c, SECONDS.a))),
      asPrinted('system B, relative to C', '1.4497', geometricMean(ratios(SECONDS.c, SECONDS.b))),
    ],
  },
  {
    id: 'quantile-type-7',
    title: 'Sample quantiles of type 7',
    source: 'R. J. Hyndman and Y. Fan, The American Statistician 50, 1996, 361–365, definition 7; values by NumPy, method linear',
    compare: () =>
      QUANTILES.map(([p, printed]) => toDigits(`p = ${p}`, printed, quantile([2, 4, 4, 5, 7, 9, 11, 12, 17, 19], p), 12)),
  },
  {
    id: 'shared-gain',
    title: '10 W less 3 W on a meter with a gain error of u = 1 %',
    source: 'JCGM 100:2008 (GUM), 5.2.2, eq. 16, by hand: 0.1 − 0.03, and the root sum of squares where the gain is not shared',
    compare: () => [
      toDigits('u of the difference, gain shared, W', '0.07', difference('gain', 'gain'), 12),
      asPrinted('u of the difference, two meters, W', '0.104403', difference('gain', 'other gain')),
    ],
  },
];

const QUANTILES: readonly (readonly [number, string])[] = [
  [0.1, '3.8'],
  [0.25, '4.25'],
  [0.75, '11.75'],
  [0.9, '17.2'],
  [0.95, '18.1'],
];

function factorOf(dof: number, share: number, printed: string): CheckedValue {
  return asPrinted(`${share} %, ${dof} degrees of freedom`, printed, studentQuantile((1 + share / 100) / 2, dof));
}

function meanInterval(): CheckedValue[] {
  const { y } = ZARR13;
  const half = (level: number) => (studentQuantile((1 + level) / 2, y.length - 1) * sampleDeviation(y)) / Math.sqrt(y.length);
  return [
    asPrinted('mean', '9.26146', mean(y)),
    asPrinted('95 % interval, lower end', '9.25824', mean(y) - half(0.95)),
    asPrinted('95 % interval, upper end', '9.26468', mean(y) + half(0.95)),
  ];
}

function ratios(reference: readonly number[], system: readonly number[]): number[] {
  return reference.map((seconds, k) => seconds / system[k]!);
}

function difference(high: string, low: string): number {
  const power = (watts: number, id: string) =>
    got(multiply(independent(1, '1', 0.01, source(id)), { value: watts, unit: 'W', parts: [] }));
  return u(subtract(power(10, high), power(3, low)));
}
