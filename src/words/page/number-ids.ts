/**
 * The address of each held number within its page: its expression, and five letters for the sentence or table that it stands in. So it
 * stays when the data changes, when paragraphs trade places and when other numbers come or go.
 */
import type { Element, Root } from 'hast';
import { visit } from 'unist-util-visit';
import { plainExpression } from '../expression/plain-expression.ts';
import { fragmentOf, freeId, shortDigest } from './fragment.ts';

/** A number, and what tells it from others of the same expression. */
export interface Standing {
  readonly expression: string;
  /** Its sentence with marks for the numbers, or the id of its table. */
  readonly within: string;
}

/** Longest part of an id that repeats the expression. */
const LONGEST = 60;

/** An id for each number, none of them in `taken` and none twice; the same again where nothing of the number itself has changed. */
export function numberIds(numbers: readonly Standing[], taken: ReadonlySet<string>): string[] {
  const ids = new Set(taken);
  return numbers.map(({ expression, within }) => {
    const plain = plainExpression(expression);
    const read = fragmentOf(fragmentOf(plain).slice(0, LONGEST));
    const id = freeId(`${read === '' ? 'number' : read}-${shortDigest(`${plain}\n${wordsOf(within)}`)}`, ids);
    ids.add(id);
    return id;
  });
}

/** Another comma or capital is no other sentence. */
function wordsOf(sentence: string): string {
  return sentence
    .normalize('NFC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}□■]+/gu, ' ')
    .trim();
}

/** Of the numbers in tables of figures, the id of the table, by number. */
export function tablesOf(page: Root): ReadonlyMap<number, string> {
  const found = new Map<number, string>();
  visit(page, 'element', (sheet: Element) => {
    const { className, id } = sheet.properties;
    if (sheet.tagName !== 'figure' || typeof id !== 'string' || !Array.isArray(className) || !className.includes('sheet')) return;
    visit(sheet, 'element', ({ properties: { dataN } }: Element) => {
      if (typeof dataN === 'string') found.set(Number(dataN), id);
    });
  });
  return found;
}

/** Gives the numbered links of a page their ids, and leads each to the note that tells what holds it: the same behind `held:`. */
export function linkHeld(page: Root, ids: readonly string[]): void {
  visit(page, 'element', (node: Element) => {
    const { dataN, ...rest } = node.properties;
    if (typeof dataN !== 'string') return;
    const id = ids[Number(dataN) - 1]!;
    node.properties = { ...rest, id, href: `#held:${id}`, dataN };
  });
}
