/** Whether a test became slower or faster from repeat to repeat. */
import { lineFit } from '../../statistics/line-fit.ts';
import { correlatedFactor, repeatCorrelation } from '../../statistics/repeat-correlation.ts';
import { absent } from '../absent.ts';
import type { Figure } from '../figure.ts';
import type { Soak } from '../soak.ts';
import { quantityOf, samplingPart, stepPart } from '../sources.ts';
import { ofTest, type ScoredTest, type Scores } from './score-table.ts';

/** A slope with an interval takes one more repeat than a straight line has parameters. */
const LEAST = 3;

/** Change of a score per repeat as a share of its mean: the slope of a straight line over the repeats, in the order of the table. */
export function driftOf(soak: Soak, { file }: Scores, test: ScoredTest): Figure {
  const counted = test.repeats.filter(({ value }) => !Number.isNaN(value)).sort((a, b) => a.line - b.line);
  const of = { ...ofTest(test), n: counted.length };
  if (counted.length < LEAST) {
    const why = `A drift takes ${LEAST} repeats with a result; ${test.title} has ${counted.length}.`;
    return absent('score_drift', { absent: 'too-short', why, of });
  }
  const values = counted.map(({ value }) => value);
  const line = lineFit(
    counted.map((_, place) => place - (counted.length - 1) / 2),
    values,
  );
  const level = line.intercept;
  if (!(level > 0))
    return absent('score_drift', { absent: 'out-of-range', why: `The mean of ${test.title} is not above zero.`, of });
  const address = `score_drift.${test.id}`;
  const step = Math.max(...counted.map((repeat) => repeat.step)) / level;
  const u = (line.uSlope / level) * inflationOf(values);
  // Two steps at the ends of the line, seen over its length.
  const reach = (step * Math.SQRT2) / (counted.length - 1);
  const part =
    u > reach / Math.sqrt(12) ? samplingPart(soak.context, address, u, line.dof) : stepPart(soak.context, address, reach);
  const lines = counted.map((repeat) => repeat.line);
  return {
    name: 'score_drift',
    quantity: quantityOf(line.slope / level, '1', [part], { stated: true, step: 0 }),
    from: { columns: ['value'], rows: [Math.min(...lines), Math.max(...lines)], file },
    of,
  };
}

/** By how much the uncertainty of the slope is too small, as each repeat is like the one before beyond what the line says. */
function inflationOf(values: readonly number[]): number {
  const n = values.length;
  const even = values.map(() => 1 / Math.sqrt(n));
  const squares = (n * (n * n - 1)) / 12;
  const tilt = values.map((_, place) => (place - (n - 1) / 2) / Math.sqrt(squares));
  return correlatedFactor(tilt, [even, tilt], repeatCorrelation(values, 'line'));
}
