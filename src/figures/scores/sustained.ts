/** What is left of a test's first results at the end of a soak. */
import { divide } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { mean } from '../../statistics/mean.ts';
import { factorOfMean, repeatCorrelation } from '../../statistics/repeat-correlation.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { absent, isReason, type Reason } from '../absent.ts';
import type { Figure } from '../figure.ts';
import { duration } from '../in-words.ts';
import { orRefused } from '../joined.ts';
import type { Soak } from '../soak.ts';
import { quantityOf } from '../sources.ts';
import { between } from './moments.ts';
import { byStart } from './order.ts';
import { repeatsPart } from './scatter-of-repeats.ts';
import { ofTest, type Repeat, type ScoredTest, type Scores } from './score-table.ts';

/** Two repeats at each end tell how they scatter, and as many between keep the ends apart. */
const LEAST = 6;
/** As for the clock: a chip with its cooler takes that long to show what it can hold, s. */
const NEEDED = 1200;

/**
 * Speed over the last third of the repeats divided by that over the first third, by the times when they started; below 1 where the device
 * became slower. Null where the table states no times: then nothing is listed.
 */
export function sustainedScore(soak: Soak, { file }: Scores, test: ScoredTest): Figure | null {
  const timed = byStart(test.repeats.filter(({ value, window }) => !Number.isNaN(value) && window !== null));
  if (timed === null || timed.length === 0) return null;
  const of = { ...ofTest(test), n: timed.length };
  const outcome = ratioOf(soak, test, timed);
  if (isReason(outcome)) return absent('sustained_score', { ...outcome, of });
  const lines = timed.map(({ line }) => line);
  const from = { columns: ['value', 'start', 'end'], rows: [Math.min(...lines), Math.max(...lines)] as const, file };
  const each = thirdOf(timed.length);
  return {
    name: 'sustained_score',
    quantity: outcome,
    from,
    of: { ...of, averaging: `last ${each} repeats over the first ${each}` },
  };
}

function thirdOf(count: number): number {
  return Math.floor(count / 3);
}

function ratioOf(soak: Soak, test: ScoredTest, timed: readonly Repeat[]): Quantity | Reason {
  const { title, better, unit, id } = test;
  if (timed.length < LEAST)
    return {
      absent: 'too-short',
      why: `It takes ${LEAST} repeats with times to tell first from last; ${title} has ${timed.length}.`,
    };
  const lasted = between(timed[0]!.window!.start, timed[timed.length - 1]!.window!.end) ?? 0;
  if (lasted < NEEDED) {
    const why = `The repeats of ${title} lasted ${duration(lasted)} together; what is sustained is told from ${duration(NEEDED)} on.`;
    return { absent: 'too-short', why };
  }
  const each = thirdOf(timed.length);
  const rho = repeatCorrelation(
    timed.map(({ value }) => value),
    'line',
  );
  const inflation = factorOfMean(each, rho);
  const meanOf = (repeats: readonly Repeat[], which: string): Quantity => {
    const values = repeats.map(({ value }) => value);
    const step = Math.max(...repeats.map((repeat) => repeat.step));
    const part = repeatsPart(soak, `sustained_score.${id}.${which}`, sampleDeviation(values), values.length, step, inflation);
    return quantityOf(mean(values), unit, [part], { stated: true, step });
  };
  const [first, last] = [meanOf(timed.slice(0, each), 'first'), meanOf(timed.slice(-each), 'last')];
  if (!(first.value > 0 && last.value > 0)) return { absent: 'out-of-range', why: `A mean of ${title} is not above zero.` };
  return orRefused(better === 'higher' ? divide(last, first) : divide(first, last));
}
