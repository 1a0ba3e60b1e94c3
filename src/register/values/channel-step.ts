/** The step of a channel: how finely its readings are told apart, where an author says so in place of the readings. */
import type { QuantityKind } from '../../intake/log.ts';
import { isParseFailure, type ParseOptions } from '../../quantities/parse.ts';
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { STEP_KIND } from './quantity-kinds.ts';
import { type StatedQuantity, statedQuantity, tellFailure, tryQuantity } from './quantity-value.ts';
import type { StatedChannel } from './stated-value.ts';
import { cut } from './values.ts';

const ANY: ParseOptions = { bare: true };

/** The step of a fan or of a quantity without a kind of its own: any unit, or none. `key` is what it stands under. */
export function anyStep(node: TextNode, key: string, report: Report): StatedQuantity | undefined {
  const read = tryQuantity(node.text, ANY);
  if (isParseFailure(read)) return tellFailure(node, key, read, 'bad-quantity', report);
  if (read.value > 0) return { text: node.text, options: ANY };
  report.error('bad-quantity', node.place, `\`${key}\` is \`${cut(node.text)}\``, { expected: 'a step above 0' });
  return undefined;
}

/** Reports a step that its channel cannot have. */
export function checkStep({ name, quantity, step }: StatedChannel, report: Report): void {
  if (!step || !quantity) return;
  if (quantity.value === 'throttle_flag') {
    report.error('channel-mismatch', step.place, `channel \`${name}\` is throttle_flag and states \`step\``, {
      expected: '`step` with readings that are told apart by a step',
      remedy: 'remove this line',
    });
    return;
  }
  const kind = STEP_KIND[quantity.value];
  if (kind) statedQuantity(step, 'step', kind, report);
  else anyStep(step, 'step', report);
}

/** A checked step in the canonical unit of its quantity (K for temperatures); nothing where it was none. */
export function stepOf(text: string, quantity: QuantityKind): { readonly step?: number } {
  const read = tryQuantity(text, STEP_KIND[quantity]?.options ?? ANY);
  return isParseFailure(read) ? {} : { step: read.value };
}
