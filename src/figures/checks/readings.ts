/** Closed forms of what is told from single readings: ranks of percentiles, shares, levels, second differences. */
import { quantileRanks } from '../../statistics/quantile-ranks.ts';
import { wilson } from '../clock/shares.ts';
import { scatterOf } from '../scatter.ts';
import { energiesOf, levelOf } from '../sound/sound.ts';
import { asPrinted, type Check, toDigits } from './check.ts';

export const READING_CHECKS: readonly Check[] = [
  {
    id: 'order-statistics',
    title: 'Ranks between which a quantile of independent values lies with 95 %',
    source:
      'binomial sums by hand: of 10 values 11/1024 lie beyond rank 2, 56/1024 beyond rank 3; 0.99³⁶⁸ and 0.95⁷² are the first below 0.025',
    compare: () => [
      asPrinted('lower rank, median of 10', '2', quantileRanks(10, 0.5).low ?? Number.NaN),
      asPrinted('upper rank, median of 10', '9', quantileRanks(10, 0.5).high ?? Number.NaN),
      asPrinted('lower rank, 1st percentile of 368', '1', quantileRanks(368, 0.01).low ?? Number.NaN),
      asPrinted('upper rank, 95th percentile of 72', '72', quantileRanks(72, 0.95).high ?? Number.NaN),
    ],
  },
  {
    id: 'share-interval',
    title: "Wilson's interval of a share",
    source: 'closed form: of 10, none, z²/(10 + z²); of 100, half, 1/2 − z/(2√(100 + z²)), with z = 1.959964',
    compare: () => [
      toDigits('upper end, 0 of 10', '0.277532775', wilson(0, 10)[1], 6),
      toDigits('lower end, 50 of 100', '0.403831529', wilson(0.5, 100)[0], 6),
    ],
  },
  {
    id: 'sound-levels',
    title: 'Mean level of 40 dB and 50 dB, each for half of the time',
    source: 'closed form: 10 lg((10⁴ + 10⁵)/2) dB',
    compare: () => {
      const { loudest, energies } = energiesOf(Float64Array.of(40, 50));
      return [toDigits('level, dB', '47.40362689494244', levelOf(loudest, (energies[0]! + energies[1]!) / 2), 12)];
    },
  },
  {
    id: 'second-differences',
    title: 'Scatter of readings that alternate between +1 and −1, by second differences',
    source: 'closed form: each second difference is 4, so that s = √(16/6)',
    compare: () => {
      const readings = Float64Array.from({ length: 100 }, (_, i) => (i % 2 === 0 ? 1 : -1));
      return [toDigits('s', '1.632993161855452', scatterOf(readings).deviation, 12)];
    },
  },
];
