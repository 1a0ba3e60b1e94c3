/** Clock and power that the table of scores itself states for its repeats. */

import { mean } from '../../statistics/mean.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import type { Of } from '../absent.ts';
import type { FigureName } from '../catalogue.ts';
import type { PresentFigure } from '../figure.ts';
import type { Entry, Soak } from '../soak.ts';
import { quantityOf } from '../sources.ts';
import { between } from './moments.ts';
import { repeatsPart } from './scatter-of-repeats.ts';
import { ofTest, type ScoredTest, type Scores, type StatedReading } from './score-table.ts';

/**
 * `score_clock.<test>`, `score_power.<test>` and `energy_per_task.<test>` from the columns `clock`, `power`, `start` and `end` of the table,
 * for what no log tells. Nobody states how true such a column is, so that the uncertainty is that of the repeats alone.
 */
export function statedFigures(soak: Soak, { file }: Scores, test: ScoredTest): Entry[] {
  const figure = (name: FigureName, column: string, readings: readonly Reading[], unit: string, of: Of = {}): Entry[] => {
    const [first] = readings;
    if (!first) return [];
    const values = readings.map(({ value }) => value).sort((a, b) => a - b);
    const step = Math.max(...readings.map((reading) => reading.step));
    const address = `${name}.${test.id}`;
    const n = values.length;
    const spread = n > 1 ? sampleDeviation(values) : 0;
    const lines = readings.map(({ line }) => line);
    const present: PresentFigure = {
      name,
      quantity: quantityOf(mean(values), unit, [repeatsPart(soak, address, spread, n, step)], { stated: false, step }),
      from: { columns: [column], rows: [Math.min(...lines), Math.max(...lines)], file },
      of: { ...ofTest(test), ...of, n, as_stated: true, ...(n > 1 ? { spread } : {}) },
    };
    return [[address, present]];
  };
  return [
    ...figure(
      'score_clock',
      'clock',
      statedAs(test, ({ clock }) => clock),
      'Hz',
      { clock: 'delivered' },
    ),
    ...figure(
      'score_power',
      'power',
      statedAs(test, ({ power }) => power),
      'W',
    ),
    ...figure('energy_per_task', 'power', energies(test), 'J'),
  ];
}

interface Reading extends StatedReading {
  readonly line: number;
}

function statedAs({ repeats }: ScoredTest, of: (repeat: ScoredTest['repeats'][number]) => StatedReading | undefined): Reading[] {
  return repeats.flatMap((repeat) => {
    const stated = of(repeat);
    return stated ? [{ ...stated, line: repeat.line }] : [];
  });
}

/** Power times the time that the repeat took. */
function energies({ repeats }: ScoredTest): Reading[] {
  return repeats.flatMap(({ power, window, line }) => {
    const seconds = window && between(window.start, window.end);
    return power && seconds ? [{ value: power.value * seconds, step: power.step * seconds, line }] : [];
  });
}
