/** What can still be said of an absent figure: "more than 10 min". */
import { definitionOf } from '../../figures/catalogue.ts';
import type { AbsentFigure } from '../../figures/figure.ts';
import { readerForm } from '../../quantities/numeral-print.ts';
import { printQuantity } from '../../quantities/print.ts';
import { chosenUnit, roundingRange } from '../../quantities/printed-digits.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { roundOutward } from '../../quantities/rounding.ts';
import { fromCanonical, unitFor } from '../../quantities/units.ts';

/**
 * The bound of an absent figure in words, in `unit` or the printer's choice: three digits, rounded so that it stays true. Undefined
 * where the figure has none, or none in that unit; how long a load would have needed is no bound of the figure, and that a time or an energy
 * is above nothing says nothing.
 */
export function boundWords({ name, bound, of }: AbsentFigure, unit?: string): string | undefined {
  if (bound === undefined || of?.needed_s !== undefined || definitionOf(name)?.unit !== bound.unit) return undefined;
  if (bound.relation === '>' && bound.value <= 0 && (bound.unit === 's' || bound.unit === 'J')) return undefined;
  if (unit !== undefined && isRefusal(unitFor(bound.unit, unit))) return undefined;
  const quantity = { value: bound.value, unit: bound.unit, parts: null };
  const display = chosenUnit(quantity, unit);
  const direction = bound.relation === '>' ? 'down' : 'up';
  const numeral = roundOutward(fromCanonical(bound.value, display.unit), roundingRange(quantity, display), direction);
  const { number, text } = printQuantity(quantity, unit === undefined ? {} : { unit });
  return `${bound.relation === '>' ? 'more' : 'less'} than ${text.replace(number, () => readerForm(numeral))}`;
}
