/** Readers of single values: each reports what is wrong at the value and gives undefined then. */
import { readCivil } from '../../intake/cells/civil.ts';
import type { Place } from '../../problem.ts';
import type { ListNode, Node, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { ID_RULE, idFromWords, isId, meant, oneOf } from './names.ts';
import { tellEmpty } from './shape.ts';

/** A text of one line: titles, makers, reasons. Longer texts come through `|` where a key allows them. */
export function lineOf(node: TextNode | undefined, key: string, report: Report): string | undefined {
  if (node === undefined) return undefined;
  if (!node.text.includes('\n')) return node.text;
  report.error('more-than-a-line', node.place, `\`${key}\` has more than one line`, { expected: 'one line' });
  return undefined;
}

/** One of a fixed set of words. */
export function wordOf<W extends string>(
  node: TextNode | undefined,
  key: string,
  allowed: readonly W[],
  report: Report,
): W | undefined {
  if (node === undefined) return undefined;
  const found = allowed.find((word) => word === node.text);
  if (found === undefined) {
    report.error('unknown-word', node.place, `\`${key}\` is \`${cut(node.text)}\``, {
      expected: oneOf(allowed),
      ...meant(node.text, allowed),
    });
  }
  return found;
}

/** `yes` or `no`. */
export function yesNoOf(node: TextNode | undefined, key: string, report: Report): boolean | undefined {
  const word = wordOf(node, key, ['yes', 'no'], report);
  return word === undefined ? undefined : word === 'yes';
}

/** An id of the project: of a device, a run, a specimen. Whether it exists is checked elsewhere. */
export function idOf(node: TextNode | undefined, key: string, report: Report): string | undefined {
  if (node === undefined) return undefined;
  if (isId(node.text)) return node.text;
  const better = idFromWords(node.text);
  report.error('bad-id', node.place, `\`${key}\` is \`${cut(node.text)}\``, {
    expected: `an id: ${ID_RULE}`,
    ...(isId(better) ? { remedy: `did you mean \`${better}\`?` } : {}),
  });
  return undefined;
}

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/** A day as `2026-03-14` (ISO 8601 calendar date, extended form), one that exists. */
export function dateOf(node: TextNode | undefined, key: string, report: Report): string | undefined {
  if (node === undefined) return undefined;
  const parts = DATE.exec(node.text);
  if (isDate(node.text)) return node.text;
  const found = parts ? `there is no day \`${node.text}\`` : `\`${key}\` is \`${cut(node.text)}\``;
  report.error('bad-date', node.place, found, { expected: 'a day written year-month-day, such as 2026-03-14' });
  return undefined;
}

/** An instant as `2026-03-14T09:00:00Z` (ISO 8601 with its offset from UTC), epoch seconds. */
export function instantOf(node: TextNode | undefined, key: string, report: Report): number | undefined {
  if (node === undefined) return undefined;
  const civil = readCivil(node.text, 'ymd');
  const epoch = civil === null || civil.offset === null ? Number.NaN : civil.day * 86_400 + civil.seconds - civil.offset;
  if (Number.isFinite(epoch)) return epoch;
  report.error('bad-date', node.place, `\`${key}\` is \`${cut(node.text)}\``, {
    expected: 'a day, a clock time and its offset from UTC, such as 2026-03-14T09:00:00Z or 2026-03-14T10:00:00+01:00',
  });
  return undefined;
}

/** Whether a text is a day as `2026-03-14` that exists. */
export function isDate(text: string): boolean {
  const parts = DATE.exec(text);
  return parts !== null && isDay(Number(parts[1]), Number(parts[2]), Number(parts[3]));
}

function isDay(year: number, month: number, day: number): boolean {
  if (month < 1 || month > 12 || day < 1) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return day <= days[month - 1]!;
}

/** The texts of a list, or of a single value. Empty lists, nested ones and repeated items are problems. */
export function textsOf(
  node: TextNode | ListNode | undefined,
  key: string,
  keyPlace: Place,
  report: Report,
): readonly TextNode[] | undefined {
  const texts = repeatableTextsOf(node, key, keyPlace, report);
  texts?.forEach((item, index) => {
    if (texts.findIndex((other) => other.text === item.text) !== index) {
      report.error('repeated-item', item.place, `\`${cut(item.text)}\` stands twice in \`${key}\``, {
        remedy: 'keep one of the two',
      });
    }
  });
  return texts;
}

/** The same where items may stand twice: what a display was read as, time after time. */
export function repeatableTextsOf(
  node: TextNode | ListNode | undefined,
  key: string,
  keyPlace: Place,
  report: Report,
): readonly TextNode[] | undefined {
  if (node === undefined) return undefined;
  if (node.kind === 'text') return [node];
  if (node.items.length === 0) tellEmpty(key, keyPlace, report);
  return node.items.filter((item) => isText(item, key, report)) as TextNode[];
}

function isText(item: Node, key: string, report: Report): boolean {
  if (item.kind === 'text') return true;
  if (item.kind === 'empty')
    report.error('empty-value', item.place, `an item of \`${key}\` is empty`, { remedy: 'give it a value or remove its line' });
  else if (item.kind !== 'refused')
    report.error('wrong-kind', item.place, `an item of \`${key}\` is ${item.kind === 'list' ? 'a list' : 'a mapping'}`, {
      expected: 'a single value',
    });
  return false;
}

/** A value as messages quote it. */
export function cut(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 57)}…` : line;
}
