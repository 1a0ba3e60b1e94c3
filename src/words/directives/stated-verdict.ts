/** Whether an author's words hold for an evaluated expression, and which words of the same form would. */
import { printedStep, printQuantity } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { interval95 } from '../../quantities/uncertainty.ts';
import { toCanonical, unitFor } from '../../quantities/units.ts';
import type { Evaluated } from '../expression/evaluate.ts';
import { ownInterval } from '../expression/interval-margins.ts';
import { HEDGES } from '../stated/hedges.ts';
import { holds, type Verdict } from '../stated/holds.ts';
import type { Stated } from '../stated/read.ts';
import { suggest } from '../stated/suggest.ts';

/** Whether words hold for an evaluated expression, its 95 % interval being its own where it has one. `said` is in its unit. */
export function verdictOf(said: Stated, evaluated: Evaluated): Verdict {
  const { quantity } = evaluated;
  const verdict = holds(said, quantity.value, ownInterval(evaluated) ?? interval95(quantity));
  if (verdict === 'holds' || isLimited(said)) return verdict;
  const closeEnough = verdict === 'holds narrowly' && !closerThanPrinted(said, quantity);
  return closeEnough || isPrinted(said, quantity) ? 'holds' : verdict;
}

/** Words in the author's form that are true of an evaluated expression, for certain where any are. `said` is in its unit. */
export function wordingFor(said: Stated, evaluated: Evaluated): string | undefined {
  const { quantity } = evaluated;
  const { text, number, unit } = printQuantity(quantity);
  const fitting = unitFor(quantity.unit, unit === '' ? '1' : unit);
  const shown = Number(number.replace('−', '-').replace(/[^\d.e-]/g, ''));
  const value = isRefusal(fitting) ? quantity.value : toCanonical(shown, fitting);
  const printed = { value, step: printedStep(quantity).canonical, text: text.replaceAll('\u00a0', ' ') };
  const sense = said.sense === undefined ? {} : { sense: said.sense };
  return suggest(said, quantity.value, quantity.unit, {
    printed,
    verdict: (words) => verdictOf({ ...words, ...sense }, evaluated),
  });
}

/** Differences of decimals lose their last digits. */
const ROUNDING = 1e-9;

/** Hedges that set a limit or a side: with them the interval must not reach across. */
const LIMITS = new Set(HEDGES.map(({ name }) => name).filter((name) => !['about', 'nearly', 'as far as'].includes(name)));

/** Whether the words set a limit, or name two numbers. */
function isLimited({ said, hedge }: Stated): boolean {
  return said.sides.length > 1 || (hedge !== undefined && LIMITS.has(hedge));
}

/**
 * Whether the words say a number more closely than the page would print it. Digits that follow the uncertainty are what readers take
 * for as much as is known (JCGM 100:2008, 7.2.6), so that words which say no more need no wider interval.
 */
function closerThanPrinted({ lower, upper }: Stated, quantity: Quantity): boolean {
  return upper - lower < printedStep(quantity).canonical * (1 - ROUNDING);
}

/**
 * Whether a number, or one with "about" before it, is the very one that the page prints. It is then never wrong, also where a sensor in
 * steps of half a degree has 59.45 printed as 59.5.
 */
function isPrinted({ nominal, hedge, lower, upper }: Stated, quantity: Quantity): boolean {
  if (hedge !== undefined && hedge !== 'about') return false;
  const { number, unit } = printQuantity(quantity);
  const fitting = unitFor(quantity.unit, unit === '' ? '1' : unit);
  if (isRefusal(fitting)) return false;
  const shown = toCanonical(Number(number.replace('−', '-').replace(/[^\d.e-]/g, '')), fitting);
  const decimals = /\.(\d+)/.exec(number)?.[1]?.length ?? 0;
  const step = toCanonical(10 ** -decimals, fitting) - toCanonical(0, fitting);
  return upper - lower >= step * (1 - ROUNDING) && Math.abs(shown - nominal) <= ROUNDING * Math.abs(nominal);
}

/** How much of an interval lies outside what the words allow: 0 for none of it, 1 for all. */
export function shareOutside({ lower, upper }: Stated, interval: readonly [number, number] | null): number {
  if (!interval) return 1;
  const [low, high] = interval;
  const inside = Math.min(high, upper) - Math.max(low, lower);
  return 1 - Math.max(0, inside) / (high - low);
}
