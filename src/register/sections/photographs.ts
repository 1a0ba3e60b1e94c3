/** Photographs on which the spots of surface readings are marked: which, and where each spot lies in them. */

import { readPoint } from '../../figures/surface/in-image.ts';
import { ID_RULE, idFromWords, isId } from '../../intake/ids.ts';
import type { DataFiles, MarkedSpot, Photographs } from '../register.ts';
import { dataPathOf } from '../values/data-path.ts';
import { textIn } from '../values/mapping.ts';
import { tellEmpty } from '../values/shape.ts';
import type { Entry, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

/** The key `photographs` below `surface`: paths, and below each its spots. */
export function photographsOf(node: MapNode | undefined, data: DataFiles, report: Report): Photographs | undefined {
  if (!node) return undefined;
  if (node.entries.size === 0) tellEmpty('photographs', node.place, report);
  const found = [...node.entries.values()].flatMap((entry): [string, MarkedSpot[]][] => {
    const { key, keyPlace: place, value } = entry;
    const path = dataPathOf({ kind: 'text', text: key, place } as TextNode, 'photographs', data, report);
    if (value.kind !== 'map' || value.entries.size === 0) {
      report.error('bad-place', place, `no spots below \`${key}\``, {
        expected: '`Lid centre: 46 % by 44 %`, a line for each spot',
      });
      return [];
    }
    const entries = [...value.entries.values()];
    const spots = entries.flatMap((spot) => spotOf(spot, report) ?? []);
    const ids = entries.map(({ key: words }) => idFromWords(words));
    const twice = entries.find((_, at) => isId(ids[at]!) && ids.indexOf(ids[at]!) < at);
    if (twice) report.error('bad-place', twice.keyPlace, `the spot \`${twice.key}\` stands here twice`, { remedy: 'remove one' });
    return path === undefined ? [] : [[path, spots]];
  });
  return new Map(found);
}

function spotOf(entry: Entry, report: Report): MarkedSpot | null {
  const spot = idFromWords(entry.key);
  const value = textIn(entry, report);
  if (!isId(spot)) report.error('bad-place', entry.keyPlace, `\`${entry.key}\` gives no id`, { expected: ID_RULE });
  if (value === undefined) return null;
  const at = readPoint(value.text);
  if (at === null)
    report.error('bad-place', value.place, `\`${entry.key}\` is at \`${value.text}\``, {
      expected: 'a place in the photograph: so many per cent from the left, by so many from the top: `46 % by 44 %`',
    });
  return at === null || !isId(spot) ? null : { spot, at };
}
