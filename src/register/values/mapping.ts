/** Mappings whose keys are the author's own names: settings, channels, phases, aliases. */
import type { Place } from '../../problem.ts';
import type { RuleId } from '../rules.ts';
import type { Entry, ListNode, MapNode, Node, TextNode } from '../yaml/node.ts';
import { KIND_WORDS } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { tellEmpty } from './shape.ts';
import { cut } from './values.ts';

export interface NameRule {
  readonly rule: RuleId;
  /** "a channel". */
  readonly what: string;
  readonly fits: (name: string) => boolean;
  /** The rule in words. */
  readonly expected: string;
  /** The fitting name nearest to what was written; '' for none. */
  readonly better: (name: string) => string;
}

/** Entries with names that fit and with a value; the others are reported. */
export function namedEntries(node: MapNode, names: NameRule, report: Report): Entry[] {
  return [...node.entries.values()].filter((entry) => {
    const named = names.fits(entry.key);
    if (!named) tellName(entry, names, report);
    if (entry.value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
    return named && entry.value.kind !== 'empty' && entry.value.kind !== 'refused';
  });
}

function tellName(entry: Entry, names: NameRule, report: Report): void {
  const better = names.better(entry.key);
  report.error(names.rule, entry.keyPlace, `${names.what} is named \`${cut(entry.key)}\``, {
    expected: names.expected,
    ...(names.fits(better) ? { remedy: `did you mean \`${better}\`?` } : {}),
  });
}

/** The value as a text, or undefined with a problem. */
export function textIn(entry: Entry, report: Report): TextNode | undefined {
  if (entry.value.kind === 'text') return entry.value;
  tellKind(entry.value, entry.key, 'a single value', report);
  return undefined;
}

/** The value as a mapping, or undefined with a problem. */
export function mapIn(entry: Entry, report: Report): MapNode | undefined {
  if (entry.value.kind === 'map') return entry.value;
  tellKind(entry.value, entry.key, 'a mapping', report);
  return undefined;
}

/** The mappings of a list; other items are reported. */
export function mapsOf(list: ListNode | undefined, key: string, keyPlace: Place, report: Report): MapNode[] {
  if (list?.items.length === 0) tellEmpty(key, keyPlace, report);
  return (list?.items ?? []).filter((item) => {
    if (item.kind === 'empty')
      report.error('empty-value', item.place, `an item of \`${key}\` is empty`, { remedy: 'give it a value or remove its line' });
    else tellKind(item, `an item of ${key}`, 'a mapping', report);
    return item.kind === 'map';
  }) as MapNode[];
}

function tellKind(node: Node, key: string, expected: string, report: Report): void {
  if (node.kind === 'refused' || KIND_WORDS[node.kind] === expected) return;
  report.error('wrong-kind', node.place, `\`${key}\` is ${KIND_WORDS[node.kind]}`, { expected });
}

/** Where the key of a node's entry stands; the node's own place where it has none. */
export function keyPlace(node: MapNode, key: string): Place {
  return node.entries.get(key)?.keyPlace ?? node.place;
}
