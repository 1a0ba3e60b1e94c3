/** How an author lets data be used: an id of the SPDX licence list, or a title of the author's own with an address. */
import LICENCES from 'spdx-license-list/spdx.json' with { type: 'json' };
import type { Place } from '../../problem.ts';
import type { Licence } from '../register.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { httpsOf } from './address.ts';
import { meant } from './names.ts';
import { optional, readShape, required, shape, text } from './shape.ts';
import { cut, lineOf } from './values.ts';

export const OWN_LICENCE = shape({
  title: required(text, 'the name of your terms', { form: 'words', example: 'Free for teaching' }),
  url: optional(text, 'where they can be read', { form: 'address' }),
});
const LISTED: Readonly<Record<string, { readonly name: string; readonly url?: string }>> = LICENCES;

/** The licence of an id of the SPDX list; undefined where the list has no such id. */
export function listedLicence(id: string): Licence | undefined {
  const found = Object.hasOwn(LISTED, id) ? LISTED[id] : undefined;
  return found && { id, title: found.name, ...(found.url === undefined ? {} : { url: found.url }) };
}

/** The licence, or undefined with a problem where it is none. */
export function readLicence(node: TextNode | MapNode | undefined, place: Place, report: Report): Licence | undefined {
  if (!node) return undefined;
  return node.kind === 'text' ? listed(node, report) : own(node, place, report);
}

function listed(node: TextNode, report: Report): Licence | undefined {
  const id = node.text;
  const found = listedLicence(id);
  if (found) return found;
  report.error('unknown-licence', node.place, `\`licence\` is \`${cut(id)}\`, which is not an id of the SPDX licence list`, {
    expected: 'an id such as CC-BY-4.0 or CC0-1.0; for terms of your own `title` and `url` below `licence`',
    ...meant(id, Object.keys(LISTED)),
  });
  return undefined;
}

function own(node: MapNode, place: Place, report: Report): Licence | undefined {
  const fields = readShape(OWN_LICENCE, node, '`licence`', place, report);
  const title = lineOf(fields.title, 'title', report);
  const url = httpsOf(fields.url, 'url', report);
  return title === undefined ? undefined : { title, ...(url === undefined ? {} : { url }) };
}
