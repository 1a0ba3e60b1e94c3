/** Front matter as plain values, and plain values as front matter: what stands in an archive is written anew from what was read. */
import { stringify } from 'yaml';
import type { ContentFile } from '../register.ts';
import { splitFrontMatter } from '../yaml/front-matter.ts';
import type { MapNode, Node } from '../yaml/node.ts';
import { Report } from '../yaml/report.ts';
import { parseFrontMatter } from '../yaml/yaml.ts';

/** A text as it was written, a list, a mapping in the author's order. */
export type Plain = string | readonly Plain[] | PlainMap;
export type PlainMap = ReadonlyMap<string, Plain>;

/** The keys of a file of content/, and the Markdown below them. */
export interface PlainFile {
  readonly keys: PlainMap;
  readonly body: string;
}

/** Reads a file that the register has read without an error. */
export function plainFile(file: ContentFile): PlainFile {
  const parts = splitFrontMatter(file, new Report());
  const root = parts && parseFrontMatter(file.path, parts.yaml, new Report());
  return { keys: root ? plainMap(root) : new Map(), body: parts?.body ?? '' };
}

function plainMap({ entries }: MapNode): PlainMap {
  return new Map([...entries.values()].map(({ key, value }) => [key, plainOf(value)]));
}

function plainOf(node: Node): Plain {
  if (node.kind === 'text') return node.text;
  if (node.kind === 'list') return node.items.map(plainOf);
  return node.kind === 'map' ? plainMap(node) : '';
}

/** A file of content/ in block style. Every value is text, as it is read: quotes stand where YAML needs them. */
export function plainText({ keys, body }: PlainFile): string {
  const yaml = stringify(keys, { schema: 'failsafe', lineWidth: 0, flowCollectionPadding: false });
  return `---\n${yaml}---\n${body === '' ? '' : `\n${body.replace(/^\s*\n/, '').trimEnd()}\n`}`;
}

/** The mapping under a key; an empty one where there is none. */
export function mapUnder(keys: PlainMap | undefined, key: string): PlainMap {
  const value = keys?.get(key);
  return value instanceof Map ? value : new Map();
}
