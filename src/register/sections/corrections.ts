/** What a note says of its published words: numbers that print differently now, each with a reason. */

import type { StatedCorrection } from '../register.ts';
import { keyPlace, mapsOf } from '../values/mapping.ts';
import { list, optional, readShape, required, type ShapeOf, shape, text } from '../values/shape.ts';
import type { SourceFile } from '../values/source-file.ts';
import { dateOf, lineOf } from '../values/values.ts';
import type { ListNode, MapNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const NUMBER_KEYS = {
  number: ['the number, by its expression or by your words', { form: 'expression' }],
  now: ['what is printed since; `absent` where the data no longer gives it', { form: 'words' }],
} as const;
const NUMBER = shape({ number: required(text, ...NUMBER_KEYS.number), now: required(text, ...NUMBER_KEYS.now) });
export const CORRECTION = shape({
  number: optional(text, ...NUMBER_KEYS.number),
  now: optional(text, ...NUMBER_KEYS.now),
  numbers: optional(list, 'several numbers that one reason explains, in the place of `number` and `now`', {
    each: { title: 'an item of `numbers`', shape: NUMBER },
  }),
  since: required(text, 'the day of the correction', { form: 'day' }),
  reason: required(text, 'why, for readers', { form: 'words' }),
});

/** The corrections, in the author's order: one for each number, also where several share a reason. */
export function readCorrections(items: ListNode | undefined, source: SourceFile, report: Report): StatedCorrection[] {
  return mapsOf(items, 'corrections', source.placeOf('corrections'), report).flatMap(
    (node) => report.whole(() => correctionsOf(node, report)) ?? [],
  );
}

function correctionsOf(node: MapNode, report: Report): StatedCorrection[] {
  const fields = readShape(CORRECTION, node, 'a correction', node.place, report);
  const shared = {
    since: dateOf(fields.since, 'since', report) ?? '',
    reason: lineOf(fields.reason, 'reason', report) ?? '',
  };
  if (!node.entries.has('numbers')) {
    const one = readShape(NUMBER, only(node, ['number', 'now']), 'a correction', node.place, report);
    return [{ ...numberOf(one, report), ...shared, place: node.place }];
  }
  for (const key of ['number', 'now'] as const) {
    const own = fields[key];
    const found = `\`${key}\` stands beside \`numbers\``;
    if (own) report.error('bad-correction', own.place, found, { remedy: 'move it into the list `numbers`, with the others' });
  }
  return mapsOf(fields.numbers, 'numbers', keyPlace(node, 'numbers'), report).map((item) => {
    const each = readShape(NUMBER, item, 'a number of a correction', item.place, report);
    return { ...numberOf(each, report), ...shared, place: item.place };
  });
}

/** The mapping with these keys alone. */
function only(node: MapNode, keys: readonly string[]): MapNode {
  return { ...node, entries: new Map([...node.entries].filter(([key]) => keys.includes(key))) };
}

function numberOf(fields: ShapeOf<typeof NUMBER>, report: Report): Pick<StatedCorrection, 'number' | 'now'> {
  return { number: lineOf(fields.number, 'number', report) ?? '', now: lineOf(fields.now, 'now', report) ?? '' };
}
