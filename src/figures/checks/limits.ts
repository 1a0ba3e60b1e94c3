/** Intervals of errors that are known by limits, through the quantities that the figures are made of. */
import { sum } from '../../quantities/arithmetic.ts';
import { expandedUncertainty, independent } from '../../quantities/uncertainty.ts';
import { asPrinted, type Check, within } from './check.ts';
import { got, source } from './gum.ts';

export const LIMIT_CHECKS: readonly Check[] = [
  {
    id: 'rectangular-limits',
    title: 'Limits of ± 1 by themselves: half width of the 95 % interval',
    source: 'JCGM 100:2008 (GUM), 4.3.7 and G.1.3 (from memory): 0.95 of the limit, 1.65 standard uncertainties',
    compare: () => [
      within('half width', 0.95, half([1 / Math.sqrt(3)]), 1e-12, '12 digits'),
      asPrinted('in standard uncertainties', '1.65', half([1 / Math.sqrt(3)]) * Math.sqrt(3)),
    ],
  },
  {
    id: 'rectangular-sums',
    title: 'Sums of four errors within limits, standard deviations 1, 1, 1 and 10, and four of 1: half width of the 95 % interval',
    source:
      'JCGM 101:2008 (GUM Supplement 1), 9.2.4 and 9.2.3 (from memory): 17.0, where the normal approximation gives 19.9; 3.88, exactly 2√3(2 − 0.6^¼)',
    compare: () => [
      asPrinted('1, 1, 1, 10', '17.0', half([1, 1, 1, 10])),
      within(
        '1, 1, 1, 1',
        2 * Math.sqrt(3) * (2 - 0.6 ** 0.25),
        half([1, 1, 1, 1]),
        0.0388,
        '1 %: one of them as limits, the rest as normal',
      ),
    ],
  },
];

function half(deviations: readonly number[]): number {
  const errors = deviations.map((u, k) => independent(0, 'K', u, { ...source(`error ${k}`), distribution: 'rectangular' }));
  return expandedUncertainty(got(sum(errors)))!;
}
