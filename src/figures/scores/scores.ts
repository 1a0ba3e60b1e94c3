/** Figures of a run's scores, test by test. */
import { mean } from '../../statistics/mean.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { absent, type Reason } from '../absent.ts';
import type { Figure, From } from '../figure.ts';
import type { Meter } from '../power/meters.ts';
import type { Entry, Soak } from '../soak.ts';
import { quantityOf, samplingPart, stepPart } from '../sources.ts';
import { ofTest, type ScoredTest, type Scores } from './score-table.ts';
import { windowFigures } from './window-figures.ts';

/** `score.<test>`, `energy_per_task.<test>` and, where the log covers the repeats, `score_clock.<test>` and `score_power.<test>`. */
export function scoreFigures(soak: Soak, scores: Scores | undefined, meter: Meter | Reason | null): Entry[] {
  return (scores?.tests ?? []).flatMap((test) => [
    [`score.${test.id}`, scoreOf(soak, scores!, test)] as const,
    ...windowFigures(soak, test, meter),
  ]);
}

function scoreOf(soak: Soak, { file }: Scores, test: ScoredTest): Figure {
  const counted = test.repeats.filter(({ value }) => !Number.isNaN(value));
  const lost = test.repeats.length - counted.length;
  if (counted.length === 0)
    return absent('score', { absent: 'no-readings', why: `No repeat of ${test.title} gave a result.`, of: ofTest(test) });
  const lines = test.repeats.map(({ line }) => line);
  const from: From = { file, columns: ['test', 'value'], rows: [Math.min(...lines), Math.max(...lines)] };
  // By size: sums then have the same bits in whatever order the table's rows stand.
  const values = counted.map(({ value }) => value).sort((a, b) => a - b);
  const step = Math.max(...counted.map((repeat) => repeat.step));
  const of = { ...ofTest(test), n: counted.length, ...(lost > 0 ? { without_result: lost } : {}) };
  if (counted.length === 1) return { name: 'score', quantity: { value: values[0]!, unit: test.unit, parts: null, step }, from, of };
  const spread = sampleDeviation(values);
  const part = repeatsPart(soak, `score.${test.id}`, spread, counted.length, step);
  const quantity = quantityOf(mean(values), test.unit, [part], { stated: true, step });
  return { name: 'score', quantity, from, of: { ...of, spread } };
}

/** Scatter of a mean over repeats, s/√n, never below step/√12: equal repeats still have their step (JCGM 100:2008, 4.2.3, F.2.2.1). */
export function repeatsPart(soak: Soak, address: string, spread: number, n: number, step: number) {
  const u = spread / Math.sqrt(n);
  const floor = step / Math.sqrt(12);
  return u > floor ? samplingPart(soak.context, address, u, n - 1) : stepPart(soak.context, address, step);
}
