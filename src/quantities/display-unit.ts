/** Which spelling of a unit a value is printed in: the SI prefix people read, minutes and hours for long times. */
import { isRefusal } from './refusal.ts';
import { type Unit, unitFor } from './units.ts';

/** A spelling to print in. */
export interface DisplayUnit {
  /** '' for a ratio. */
  readonly spelling: string;
  readonly unit: Unit;
  /** Decimals worth printing; without it as many as the value deserves. */
  readonly decimals?: number;
}

/** Spellings by the smallest canonical magnitude that they are used for, ascending; the first also serves what is smaller. */
type Ladder = readonly (readonly [from: number, spelling: string, decimals?: number])[];

const LADDERS: ReadonlyMap<string, Ladder> = new Map<string, Ladder>([
  [
    's',
    [
      [0, 'ns'],
      [1e-6, 'µs'],
      [1e-3, 'ms'],
      [1, 's'],
      [120, 'min', 1],
      [7200, 'h', 2],
    ],
  ],
  [
    'A·s',
    [
      [0, 'mAh'],
      [3600, 'Ah'],
    ],
  ],
  [
    'V/A',
    [
      [0, 'µΩ'],
      [1e-3, 'mΩ'],
      [1, 'Ω'],
      [1e3, 'kΩ'],
      [1e6, 'MΩ'],
    ],
  ],
]);
const PREFIXED: ReadonlyMap<string, readonly string[]> = new Map([
  ['Hz', ['', 'k', 'M', 'G', 'T']],
  ['A', ['n', 'µ', 'm', '', 'k']],
  ['V', ['n', 'µ', 'm', '', 'k']],
  ['W', ['n', 'µ', 'm', '', 'k', 'M']],
  ['J', ['n', 'µ', 'm', '', 'k', 'M']],
  ['s', ['n', 'µ', 'm', '']],
]);
const POWERS = ['n', 'µ', 'm', '', 'k', 'M', 'G', 'T'];

/** Spellings for a canonical unit, from the smallest to the largest. */
function ladderOf(canonical: string): Ladder {
  const own = LADDERS.get(canonical);
  if (own) return own;
  const [first = '', ...rest] = canonical.split('/');
  const prefixes = canonical === '1' ? undefined : PREFIXED.get(first);
  if (!prefixes) return [[0, canonical]];
  const steps = prefixes.map(
    (prefix) => [Number(`1e${3 * (POWERS.indexOf(prefix) - 3)}`), [prefix + first, ...rest].join('/')] as const,
  );
  return [[0, steps[0]![1]], ...steps.slice(1)];
}

/** The spelling for a magnitude (value or uncertainty, whichever is larger, in the canonical unit). Zero stands in the unit without a prefix. */
export function displayUnit(canonical: string, magnitude: number): DisplayUnit {
  const ladder = ladderOf(canonical);
  const at = magnitude === 0 ? ladder.findIndex(([from]) => from === 1) : ladder.findLastIndex(([from]) => from <= magnitude);
  return rung(canonical, ladder[Math.max(0, at)]!);
}

/** The next smaller spelling, or undefined below the smallest. */
export function smallerUnit(canonical: string, spelling: string): DisplayUnit | undefined {
  const ladder = ladderOf(canonical);
  const next = ladder[ladder.findIndex(([, name]) => name === spelling) - 1];
  return next && rung(canonical, next);
}

/** The spelling that was asked for, or undefined where the value cannot be given in it. */
export function askedUnit(canonical: string, spelling: string): DisplayUnit | undefined {
  const unit = unitFor(canonical, spelling);
  return isRefusal(unit) ? undefined : { spelling: spelling === '1' ? '' : spelling.trim(), unit };
}

function rung(canonical: string, [, spelling, decimals]: Ladder[number]): DisplayUnit {
  const unit = unitFor(canonical, spelling);
  if (isRefusal(unit)) throw new Error(`${spelling} is no spelling of ${canonical}`);
  return { spelling: spelling === '1' ? '' : spelling, unit, ...(decimals !== undefined && { decimals }) };
}
