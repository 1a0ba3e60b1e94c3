/** `:value[address or expression]{unit=…}`: prints what it stands for. */

import type { Nodes } from 'mdast';
import { error, type Place } from '../../problem.ts';
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal, type Refusal } from '../../quantities/refusal.ts';

import type { RoundingRange } from '../../quantities/rounding.ts';
import { nearestUnit, unitFor } from '../../quantities/units.ts';
import { evaluate } from '../expression/expression.ts';
import type { Span } from '../expression/expression-tree.ts';
import { ownInterval } from '../expression/interval-margins.ts';
import { standInsText } from '../expression/stand-ins.ts';
import type { TextProblem } from '../expression/text-problem.ts';
import { heldAnchor, type PageElement } from '../page/page-node.ts';
import { recordedInstead } from '../page/recorded-words.ts';
import { placeAt, report, spanOf, type Writing } from '../page/writing.ts';
import type { DraftEntry, HeldBy, LedgerKind } from '../written.ts';
import { coarserOf } from './coarser.ts';
import type { WrittenDirective } from './read-directive.ts';

/** The link that shows the value, or null after reporting why it cannot be printed. */
export function value(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const label = read.label as NonNullable<WrittenDirective['label']>;
  const evaluated = evaluate(label.text, writing.subjects, placeAt(writing, label.start));
  const unit = read.attributes.find(({ name }) => name === 'unit');
  if ('problems' in evaluated) {
    const span = { start: spanOf(node).start, end: read.end };
    const asked = { kind: 'value', text: label.text, expression: label.text.trim(), unit: unit?.value, span } as const;
    const said = recordedInstead(writing, asked, placeAt(writing, span.start), evaluated.problems);
    if (said) return said;
    writing.problems.push(...evaluated.problems);
    return null;
  }
  if (evaluated.held.length === 0) {
    report(writing, holdsNothing(label));
    return null;
  }
  const to = read.attributes.find(({ name }) => name === 'to');
  const coarser = to && coarserOf(to, evaluated.quantity, unit?.value);
  if (coarser && 'rule' in coarser) {
    report(writing, coarser);
    return null;
  }
  const shown = printed(evaluated.quantity, { unit: unit?.value, interval: ownInterval(evaluated), ...coarser });
  if ('refused' in shown) {
    const near = unit && nearestUnit(unit.value);
    const remedy = near && near !== unit.value ? { remedy: `did you mean \`${near}\`?` } : {};
    const expected = shown.expected === undefined ? {} : { expected: shown.expected };
    writing.problems.push(
      error('unit-mismatch', placeAt(writing, unit?.valueStart ?? label.start), shown.refused, { ...expected, ...remedy }),
    );
    return null;
  }
  const place = placeAt(writing, spanOf(node).start);
  const said = { ...shown, shown: shown.shown + standInsText(evaluated.held) };
  writing.drafts.push(entryOf('value', place, label.text, label.text.trim(), said, evaluated.held));
  return heldAnchor(writing.drafts.length - 1, said.shown);
}

/** A literal alone would be a number that the author typed, shown as if the data held it. */
export function holdsNothing({ start, end }: Span): TextProblem {
  return { rule: 'holds-nothing', start, end, found: 'no address', expected: 'one figure, setting, condition or rating at least' };
}

interface Shown {
  readonly value: number;
  readonly unit: string;
  readonly u: number | null;
  readonly shown: string;
  readonly uncertainty: string;
}

/** How to print: in a unit of the author's choice, and with an interval that is not the one of the parts. */
interface Printing {
  readonly unit?: string | undefined;
  readonly interval?: readonly [number, number] | undefined;
  /** Coarser than the uncertainty asks for. */
  readonly to?: RoundingRange;
}

/** A quantity through the one printer, in a unit of the author's choice or the printer's. */
export function printed(quantity: Quantity, { unit, interval, to }: Printing = {}): Shown | Refusal {
  const fitting = unit === undefined ? undefined : unitFor(quantity.unit, unit);
  if (isRefusal(fitting)) return fitting;
  const { value, unit: inUnit, u, text } = printQuantity(quantity, { ...(unit === undefined ? {} : { unit }), ...(to && { to }) });
  return { value, unit: inUnit, u, shown: text, uncertainty: printUncertainty(quantity, { unit, interval }) };
}

/** A number of the ledger that is printed as the data gives it. */
export function entryOf(
  kind: LedgerKind,
  place: Place,
  text: string,
  expression: string,
  shown: Shown,
  held: readonly HeldBy[],
): DraftEntry {
  const { file, line, column } = place;
  return { file, line, column, kind, text, expression, ...shown, verdict: 'printed', held };
}
