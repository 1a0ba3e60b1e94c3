/** `:value[…]{to="0.1 GHz"}`: a value printed coarser than its uncertainty, as the author wants it said; never finer. */
import { printedStep } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { type RoundingRange, rangeOfStep, sizeOf } from '../../quantities/rounding.ts';
import { unitFor } from '../../quantities/units.ts';
import type { TextProblem } from '../expression/text-problem.ts';
import type { WrittenAttribute } from './read-directive.ts';

export interface Coarser {
  readonly to: RoundingRange;
  /** The unit to print in, where the author names one. */
  readonly unit?: string;
}

/** Reads the attribute for a quantity that is printed in `unit`, or in the printer's choice. */
export function coarserOf(written: WrittenAttribute, quantity: Quantity, unit?: string): Coarser | TextProblem {
  const [, number = '', spelling = ''] = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*(\S.*?)?\s*$/.exec(written.value) ?? [];
  const size = Number(number);
  if (!(size > 0)) return wrong(written, 'a step with its unit: `0.1 GHz`, `5 %`, `1 °C`');
  const asked = spelling === '' ? unit : differenceOf(quantity, spelling);
  const fitting = asked === undefined ? undefined : unitFor(quantity.unit, asked);
  if (isRefusal(fitting)) return { ...wrong(written, fitting.expected ?? 'a unit of the value'), rule: 'unit-mismatch' };
  const range = rangeOfStep(size);
  if (sizeOf(range) !== size) return wrong(written, '1, 2 or 5 and their tenfolds: `0.1`, `0.2`, `0.5`, `10`');
  const own = printedStep(quantity, asked);
  if (asked === undefined && own.unit !== '') return wrong(written, `the unit too: \`${number} ${own.unit}\``);
  if (size < own.size) return finer(written, own);
  return { to: range, ...(asked === undefined ? {} : { unit: asked }) };
}

/** A temperature is printed in °C and so is the step in which it is rounded; a K there means the same. */
function differenceOf(quantity: Quantity, spelling: string): string {
  return quantity.unit === '°C' && spelling === 'K' ? '°C' : spelling;
}

function finer(written: WrittenAttribute, { size, unit }: { readonly size: number; readonly unit: string }): TextProblem {
  const step = `${size}${unit === '' ? '' : ` ${unit}`}`;
  return wrong(written, `${step} or coarser: the value is not known more closely`);
}

function wrong({ value, valueStart }: WrittenAttribute, expected: string): TextProblem {
  return { rule: 'attribute-value', start: valueStart, end: valueStart + value.length, found: `\`to="${value}"\``, expected };
}
