/** Figures of a run's scores, test by test. */
import type { Quantity } from '../../quantities/quantity.ts';
import { mean } from '../../statistics/mean.ts';
import { quantile } from '../../statistics/quantile.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { absent, type Of, type Reason } from '../absent.ts';
import { type Figure, type From, isPresent } from '../figure.ts';
import type { Meter } from '../power/meters.ts';
import type { Entry, Soak } from '../soak.ts';
import { quantityOf } from '../sources.ts';
import { driftOf } from './drift.ts';
import { edgesOf } from './edges.ts';
import { inOrder } from './order.ts';
import { outlierIn } from './outlier.ts';
import { repeatsInflation, repeatsPart } from './scatter-of-repeats.ts';
import { scorePer } from './score-per.ts';
import { ofTest, type Repeat, type ScoredTest, type Scores } from './score-table.ts';
import { statedFigures } from './stated-readings.ts';
import { sustainedScore } from './sustained.ts';
import { windowFigures } from './window-figures.ts';

/**
 * `score.<test>`, `score_drift.<test>`, where the table states times `sustained_score.<test>`, `energy_per_task.<test>` and, where the log covers the repeats or the table states them,
 * `score_clock.<test>` and `score_power.<test>`; what was scored by the watt and by the joule. A log is taken before a table.
 */
export function scoreFigures(soak: Soak, scores: Scores | undefined, meter: Meter | Reason | null): Entry[] {
  const edges = edgesOf(soak, scores, meter);
  return (scores?.tests ?? []).flatMap((test) => {
    const score = scoreOf(soak, scores!, test);
    const sustained = sustainedScore(soak, scores!, test);
    const stated = statedFigures(soak, scores!, test);
    const logged = windowFigures(soak, test, meter, edges).filter(
      ([address, figure]) => isPresent(figure) || !stated.some(([each]) => each === address),
    );
    const had = new Map([...stated, ...logged]);
    return [
      [`score.${test.id}`, score] as const,
      [`score_drift.${test.id}`, driftOf(soak, scores!, test)] as const,
      ...(sustained ? [[`sustained_score.${test.id}`, sustained] as const] : []),
      ...had,
      ...scorePer(test, score, had),
    ];
  });
}

function scoreOf(soak: Soak, { file, columns = ['test', 'value'] }: Scores, test: ScoredTest): Figure {
  const counted = test.repeats.filter(({ value }) => !Number.isNaN(value));
  const lost = test.repeats.length - counted.length;
  if (counted.length === 0)
    return absent('score', { absent: 'no-readings', why: `No repeat of ${test.title} gave a result.`, of: ofTest(test) });
  const lines = test.repeats.map(({ line }) => line);
  const from: From = { file, columns, rows: [Math.min(...lines), Math.max(...lines)] };
  // By size: sums then have the same bits in whatever order the table's rows stand.
  const values = counted.map(({ value }) => value).sort((a, b) => a - b);
  const step = Math.max(...counted.map((repeat) => repeat.step));
  const of = { ...ofTest(test), n: counted.length, ...(lost > 0 ? { without_result: lost } : {}) };
  if (counted.length === 1) return { name: 'score', quantity: { ...single(soak, test, counted[0]!), step }, from, of };
  const spread = sampleDeviation(values);
  const inflation = repeatsInflation(inOrder(counted).map(({ value }) => value));
  const part = repeatsPart(soak, `score.${test.id}`, spread, counted.length, step, inflation);
  const quantity = quantityOf(mean(values), test.unit, [part], { stated: true, step });
  const outlier = outlierIn(counted);
  const extremes = { median: quantile(values, 0.5), least: values[0]!, greatest: values[values.length - 1]! };
  return {
    name: 'score',
    quantity,
    from,
    of: { ...of, spread, ...extremes, ...alike(counted.length, inflation), ...(outlier === null ? {} : { outlier }) },
  };
}

/** What correlated repeats are worth, where they are. */
function alike(n: number, inflation: number): Of {
  return inflation > 1 ? { repeats_worth: Number((n / inflation ** 2).toPrecision(2)) } : {};
}

/** A value of one repeat, with the error that its table states; else of unknown uncertainty. */
function single({ context }: Soak, { id, title, unit }: ScoredTest, { value, error }: Repeat): Quantity {
  if (!error) return { value, unit, parts: null };
  const { u, ...shape } = error;
  const source = {
    id: `run:${context.run}/score.${id}/stated`,
    title: `error of ${title} as its table states it`,
    dof: null,
    ...shape,
  };
  return { value, unit, parts: [{ source, share: u }] };
}
