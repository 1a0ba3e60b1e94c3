/** Reads a quantity of the front matter through the parser of quantities, and says what is wrong in the words of its key. */
import type { Place } from '../../problem.ts';
import { isParseFailure, type ParseFailure, type ParseOptions, parseQuantity } from '../../quantities/parse.ts';
import type { Part, Quantity, Source } from '../../quantities/quantity.ts';
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import type { Kind } from './quantity-kinds.ts';
import { cut } from './values.ts';

/** A quantity as stated, checked. Its text is read again for each run, because the source of its uncertainty names the run. */
export interface StatedQuantity {
  readonly text: string;
  readonly options: ParseOptions;
}

const BARE_NUMBER = /^[+\-−]?(?:\d[\d\u00A0\u202F ]*(?:[.,]\d*)?|[.,]\d+)(?:e[+\-−]?\d+)?$/i;
/** Stands in while a text is only checked; no quantity keeps it. */
const CHECKING: Source = { id: 'check', title: '', dof: null };

/** Tells whether a text is a number and nothing else. */
export function isBareNumber(text: string): boolean {
  return BARE_NUMBER.test(text);
}

/** What the parser makes of a text, only to look at. */
export function tryQuantity(text: string, options: ParseOptions = {}): Quantity | ParseFailure {
  return parseQuantity(text, CHECKING, options);
}

/** A quantity of any kind, a bare number too, or undefined where the text is words. */
export function looseQuantity(text: string): StatedQuantity | undefined {
  const options = { bare: true };
  return isParseFailure(tryQuantity(text, options)) ? undefined : { text, options };
}

/** A quantity with its unit that was measured, so that no `±` means unknown and not exact; undefined where the text is words. */
export function measuredQuantity(text: string): StatedQuantity | undefined {
  const options = { unstated: 'unknown' } as const;
  return isParseFailure(tryQuantity(text, options)) ? undefined : { text, options };
}

/** Checks a quantity of a known kind; undefined, with a problem at the value, where it is not one. */
export function statedQuantity(node: TextNode | undefined, key: string, kind: Kind, report: Report): StatedQuantity | undefined {
  if (node === undefined) return undefined;
  const options = kind.options ?? {};
  if (isBareNumber(node.text) && !options.bare) return tellBare(node, key, kind, report);
  const read = tryQuantity(node.text, options);
  if (isParseFailure(read)) return tellFailure(node, key, read, 'bad-quantity', report);
  const quoted = `\`${key}\` is \`${cut(node.text)}\``;
  if (read.unit !== kind.unit) {
    report.error('wrong-unit', node.place, `${quoted}, which is not ${kind.noun}`, {
      expected: `${kind.noun}, such as ${kind.example}`,
    });
  } else if (kind.above !== undefined && read.value <= kind.above) {
    report.error('bad-quantity', node.place, quoted, {
      expected: `${kind.noun} above ${kind.above} ${kind.unit}`.replace(/ 1$/, ''),
    });
  } else return { text: node.text, options };
  return undefined;
}

function tellBare(node: TextNode, key: string, kind: Kind, report: Report): undefined {
  report.error('number-without-unit', node.place, `\`${key}\` is \`${cut(node.text)}\`, a number without a unit`, {
    expected: `${kind.noun} with its unit`,
    remedy: `write the unit after the number, for instance \`${key}: ${kind.example}\``,
  });
}

/** Reports what a parser of quantities could not read, at the sign where it stopped. */
export function tellFailure(
  node: TextNode,
  key: string,
  failed: ParseFailure,
  rule: 'bad-quantity' | 'bad-accuracy',
  report: Report,
): undefined {
  const more = /^did you mean/.test(failed.expected) ? { remedy: failed.expected } : { expected: failed.expected };
  report.error(rule, placeInside(node, failed.offset), `\`${key}\` is \`${cut(node.text)}\`: ${failed.failure}`, more);
}

/** Place of an offset in a value of one line. */
function placeInside(node: TextNode, offset: number): Place {
  const oneLine = node.inside.endLine === node.inside.line;
  if (!oneLine || offset <= 0 || offset >= node.text.length) return node.place;
  return { ...node.inside, column: node.inside.column + offset };
}

/** The quantity of a checked text, its uncertainty laid to a source. */
export function quantityOf(stated: StatedQuantity, id: string, title: string): Quantity {
  const read = parseQuantity(stated.text, { id, title, dof: null }, stated.options);
  if (isParseFailure(read)) throw new Error(`"${stated.text}" was checked before: ${read.failure}`);
  return { ...read, parts: read.parts?.map((part) => withOwn(part, read.unit)) ?? null };
}

/** A source that says its own standard uncertainty: that of the statement. */
function withOwn({ source, share }: Part, unit: string): Part {
  return { source: { ...source, standard: { u: Math.abs(share), unit: unit === '°C' ? 'K' : unit } }, share };
}
