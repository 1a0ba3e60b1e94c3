/** What a comparison could have told: the smallest difference, and how many runs would have told the one that was seen. */
import { exact, expandedUncertainty } from '../../quantities/uncertainty.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { absent, type Of } from '../absent.ts';
import type { FigureName } from '../catalogue.ts';
import type { Figure } from '../figure.ts';
import { FALSE_VERDICTS, type TestedWithVerdict } from './verdicts.ts';

/** Chance that the runs named would tell the difference. */
const POWER = 0.9;
/** More runs of a setting than anybody makes. */
const MOST = 99;

/** Figures that lie between two settings and have a verdict from a known spread between runs, each with the two beside it. */
export function couldTell(all: readonly TestedWithVerdict[], settings: number): (readonly [string, Figure])[] {
  return all.flatMap((each) => {
    if (each.asked?.kind !== 'apart' || !each.asked.between) return [];
    const { figure, address } = each;
    const { run, reference, test, title } = figure.of ?? {};
    const of = { figure: figure.name, run: run!, reference: reference!, ...(test === undefined ? {} : { test, title: title! }) };
    return [
      [`smallest_told.${address}`, smallestTold(each, of)],
      [`runs_to_tell.${address}`, runsToTell(each, of, settings)],
    ] as const;
  });
}

/** The half width at which the figure was judged: the clearest of m against 5 % ÷ m, so that it holds whatever the others are. */
function smallestTold({ asked, family, figure }: TestedWithVerdict, of: Of): Figure {
  const why = unknownSpread({ asked, family });
  if (why !== null) return absent('smallest_told', { absent: 'too-short', why, of });
  const half = expandedUncertainty(asked!.quantity, 1 - FALSE_VERDICTS / family)!;
  return figureOf('smallest_told', outward(half), asked!.quantity.unit, figure, of);
}

/**
 * The smallest number of runs n of every setting at which a difference of this size has a chance of 90 % to be told:
 * (t₁₋α⁄₂(ν) + t₀.₉(ν))·√(2s²/n + u²) ≤ |d| with ν = k(n − 1) over k settings, s the spread between runs, and u what more runs do not
 * make smaller. It takes the difference and the spread that were seen for the true ones, so it is a guide and no promise.
 */
function runsToTell({ asked, family, figure }: TestedWithVerdict, of: Of, settings: number): Figure {
  const why = unknownSpread({ asked, family });
  if (why !== null) return absent('runs_to_tell', { absent: 'too-short', why, of });
  const { quantity, neutral, between } = asked!;
  const seen = Math.abs(quantity.value - neutral);
  const [a, b] = between!.map(({ runs }) => runs.length) as [number, number];
  const isBetween = (id: string) => id.startsWith('comparison:') || id.startsWith('run:');
  const variance = (quantity.parts ?? []).map(({ source, share }) => ({ moves: isBetween(source.id), square: share * share }));
  const moving = sum(variance.filter(({ moves }) => moves).map(({ square }) => square)) / (1 / a + 1 / b);
  const fixed = sum(variance.filter(({ moves }) => !moves).map(({ square }) => square));
  const enough = (n: number) => {
    const dof = settings * (n - 1);
    const factor = studentQuantile(1 - FALSE_VERDICTS / (2 * family), dof) + studentQuantile(POWER, dof);
    return factor * Math.sqrt((2 * moving) / n + fixed) <= seen;
  };
  const needed = smallest(2, MOST, enough);
  if (needed !== null) return figureOf('runs_to_tell', needed, '1', figure, of);
  return absent('runs_to_tell', {
    absent: 'out-of-range',
    why: `More than ${MOST} runs of each setting would have to be made to tell a difference as small as the one that was seen.`,
    of,
  });
}

function figureOf(name: FigureName, value: number, unit: string, { of: said, ...figure }: Figure, of: Of): Figure {
  const from = 'from' in figure ? figure.from : { columns: [], rows: null };
  return { name, quantity: exact(value, unit), from, of };
}

function unknownSpread({ asked, family }: Pick<TestedWithVerdict, 'asked' | 'family'>): string | null {
  if (asked!.dof === 0)
    return 'No setting was run twice, so that nothing is known of how runs lie apart: what could have been told cannot be said.';
  return family === 0 ? 'The figure has no verdict.' : null;
}

/** The smallest whole number from `low` to `high` of which something holds that holds for all above it; null where there is none. */
function smallest(low: number, high: number, holds: (n: number) => boolean): number | null {
  if (!holds(high)) return null;
  let [from, to] = [low, high];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}

/** Two significant digits, rounded up: what is said to be told is. */
function outward(value: number): number {
  if (!(value > 0)) return 0;
  const digits = 1 - Number(value.toExponential().split('e')[1]);
  const up = Math.ceil(Number((value * 10 ** digits).toPrecision(12)));
  return Number(`${up}e${-digits}`);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
