/** What an instrument's `measures:` state besides accuracy and step: a correction of its readings, and where it is accurate. */
import type { AccurateRange, Correction } from '../../figures/context.ts';
import type { QuantityKind } from '../../intake/log.ts';
import { isParseFailure } from '../../quantities/parse.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { type Kind, STEP_KIND, TEMPERATURE } from '../values/quantity-kinds.ts';
import { statedQuantity, tryQuantity } from '../values/quantity-value.ts';
import { cut } from '../values/values.ts';
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

/** Of flags, counters and what has no unit of its own, neither can be stated. */
const CALIBRATED: readonly QuantityKind[] = ['temperature', 'ambient', 'clock', 'current', 'voltage', 'power', 'utilisation'];

/** `correction: −0.3 ± 0.1 K`: added to every reading. Its uncertainty must be stated: a correction is never exact. */
export function readCorrection(node: TextNode | undefined, quantity: QuantityKind, report: Report): Correction | undefined {
  const kind = kindFor('correction', node, quantity, report);
  const example = quantity === 'utilisation' ? '−0.5 ± 0.2 %' : `−0.3 ± 0.1 ${kind?.unit}`;
  const read =
    node && kind && checked(node, 'correction', { ...kind, example, options: { ...kind.options, unstated: 'unknown' } }, report);
  if (!read) return undefined;
  if (read.parts !== null) {
    const [part] = read.parts;
    const { distribution } = part?.source ?? {};
    const u = Math.abs(part?.share ?? 0);
    return { value: read.value, unit: read.unit, u, ...(distribution ? { distribution } : {}), text: node.text };
  }
  report.error('bad-quantity', node.place, `\`correction\` is \`${cut(node.text)}\`, without its uncertainty`, {
    expected: `a correction with its uncertainty, such as \`${example}\``,
  });
  return undefined;
}

/** `accurate_from` and `accurate_to`: the readings between which the instrument is accurate. */
export function readAccurateRange(
  { accurate_from, accurate_to }: { readonly accurate_from?: TextNode | undefined; readonly accurate_to?: TextNode | undefined },
  quantity: QuantityKind,
  report: Report,
): AccurateRange | undefined {
  const from = endOf('accurate_from', accurate_from, quantity, report);
  const to = endOf('accurate_to', accurate_to, quantity, report);
  if (from !== undefined && to !== undefined && from >= to) {
    report.error('bad-quantity', accurate_to!.place, `\`accurate_to\` is \`${cut(accurate_to!.text)}\``, {
      expected: `a value above \`accurate_from\`, which is \`${cut(accurate_from!.text)}\``,
    });
    return undefined;
  }
  if (from === undefined && to === undefined) return undefined;
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

function endOf(key: string, node: TextNode | undefined, quantity: QuantityKind, report: Report): number | undefined {
  const step = kindFor(key, node, quantity, report);
  const kind = step?.unit === 'K' ? TEMPERATURE : step;
  return node && kind && checked(node, key, kind, report)?.value;
}

/** What is stated of the quantity is measured in this; undefined, with a problem at the value, where it cannot be stated. */
function kindFor(key: string, node: TextNode | undefined, quantity: QuantityKind, report: Report): Kind | undefined {
  if (!node) return undefined;
  const kind = CALIBRATED.includes(quantity) ? STEP_KIND[quantity] : undefined;
  if (kind) {
    const { above: _, ...any } = kind;
    return any;
  }
  report.error('bad-quantity', node.place, `\`${key}\` of ${quantity}`, {
    expected: `\`${key}\` of one of ${CALIBRATED.join(', ')}`,
    remedy: `remove \`${key}\``,
  });
  return undefined;
}

function checked(node: TextNode, key: string, kind: Kind, report: Report): Quantity | undefined {
  const stated = statedQuantity(node, key, kind, report);
  const read = stated && tryQuantity(stated.text, stated.options);
  return read && !isParseFailure(read) ? read : undefined;
}
