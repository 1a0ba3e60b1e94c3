/** Numbers that a wording could say of a value, those nearest to the author's form first. */
import { shift } from '../../quantities/decimal.ts';
import type { SaidNumber } from './phrase.ts';
import { roundStep } from './precision.ts';
import { clean } from './stated-number.ts';
import type { Saying } from './wording.ts';

export type Direction = 'near' | 'up' | 'down';

/** From which side each hedge comes at its number: "under" must name a larger one, "over" a smaller one. */
const DIRECTIONS: ReadonlyMap<string, Direction> = new Map([
  ['nearly', 'up'],
  ['just under', 'up'],
  ['under', 'up'],
  ['at most', 'up'],
  ['up to', 'up'],
  ['never above', 'up'],
  ['within', 'up'],
  ['just over', 'down'],
  ['over', 'down'],
  ['at least', 'down'],
  ['never below', 'down'],
]);

export function directionOf(hedge: string | undefined): Direction {
  return DIRECTIONS.get(hedge ?? '') ?? 'near';
}

/** Decimals tried beyond the author's. */
const FINER = 12;
/** Beside a hedge, more than these are no way to speak: "just over 33.688 percent". */
export const FINER_HEDGED = 1;
/** Parts that people say without thinking, the commonest first; beside a whole only halves and quarters. */
const PARTS = [2, 4, 3, 5];
/** The last resort of parts: "nine tenths". */
const TENTHS = 10;

/**
 * What to say of `value` (in the side's own unit): in the author's parts, in multiples of his round step, to his last digit, and then ever
 * finer. `up` and `down` give the next number on that side and the one after it, for hedges that leave out the number itself.
 * `finer` is how many decimals beyond the author's are tried.
 */
export function sayingsOf(side: SaidNumber, value: number, direction: Direction, finer = FINER): Saying[] {
  const { amount } = side;
  const sayings: Saying[] = [];
  const inParts = amount.part !== undefined || amount.article === true || (side.unit?.kind === 'times' && amount.place === 0);
  if (inParts && Math.abs(value) < 1000) sayings.push(...inPartsOf(side, value, direction));
  const step = amount.part === undefined && amount.place >= 0 ? roundStep(Math.abs(amount.value)) : 0;
  if (step > 0) sayings.push(...around(value / step, direction).map((count) => ({ value: clean(count * step), place: 0 })));
  for (let place = amount.place; place >= Math.min(amount.place, 0) - finer; place--) {
    sayings.push(...around(shift(value, -place), direction).map((count) => ({ value: shift(count, place), place })));
  }
  return sayings;
}

/** Wholes and parts that are near the value: of an author's fraction its own parts first, then the nearest. */
function inPartsOf(side: SaidNumber, value: number, direction: Direction): Saying[] {
  const own = side.amount.part === undefined ? [] : sayParts(value, Math.round(1 / side.amount.part), direction);
  const whole: Saying[] = around(value, direction).map((count) => ({ value: count, place: 0 }));
  const fit = PARTS.filter((each) => Math.abs(value) < 1 || each === 2 || each === 4);
  const parts = fit.flatMap((each) => sayParts(value, each, direction));
  const nearest = Math.abs(value) < 1 ? parts.sort((a, b) => Math.abs(a.value - value) - Math.abs(b.value - value)) : parts;
  const tenths = Math.abs(value) < 1 ? sayParts(value, TENTHS, direction) : [];
  return side.amount.part === undefined ? [...whole, ...nearest, ...tenths] : [...own, ...nearest, ...tenths, ...whole];
}

function sayParts(value: number, parts: number, direction: Direction): Saying[] {
  return around(value * parts, direction).map((count) => ({ value: clean(count / parts), parts }));
}

function around(count: number, direction: Direction): number[] {
  const at = clean(count);
  if (direction === 'up') return [Math.ceil(at), Math.ceil(at) + 1];
  if (direction === 'down') return [Math.floor(at), Math.floor(at) - 1];
  return [Math.round(at)];
}
