/** Aliases: the short names that a note or comparison gives to runs, and that its addresses begin with. */
import { definitionOf } from '../../figures/catalogue.ts';
import type { Place } from '../../problem.ts';
import { MEASURED_CONDITIONS } from '../values/condition-kinds.ts';
import { type NameRule, namedEntries, textIn } from '../values/mapping.ts';
import { isSnakeName, SNAKE_RULE, snakeFromWords } from '../values/names.ts';
import { tellEmpty } from '../values/shape.ts';
import type { Reference } from '../values/stated-value.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { referenceOf } from './shared-keys.ts';

/** Words of the expressions, and first words of addresses that need no alias when a note has one run. */
const TAKEN: ReadonlySet<string> = new Set([
  'min',
  'max',
  'mean',
  'abs',
  'not',
  'and',
  'or',
  'within',
  'between',
  'of',
  'setting',
  ...MEASURED_CONDITIONS,
  'device',
  'score',
  'surface',
]);

/** How aliases are written. */
export const ALIASES: NameRule = {
  rule: 'bad-alias',
  what: 'an alias',
  fits: (name) => isSnakeName(name) && !TAKEN.has(name) && !definitionOf(name),
  expected: `${SNAKE_RULE}; not a word of the expressions, such as \`max\`, nor the name of a figure or condition`,
  better: snakeFromWords,
};

export interface Alias {
  readonly place: Place;
  readonly to: Reference;
}

/** Alias to id, in the author's order. A single id stands for itself. */
export function readAliases(node: TextNode | MapNode | undefined, key: string, report: Report): Map<string, Alias> {
  const aliases = new Map<string, Alias>();
  if (node?.kind === 'text') {
    const to = referenceOf(node, key, report);
    if (to) aliases.set(to.value, { place: node.place, to });
  } else if (node) {
    if (node.entries.size === 0) tellEmpty(key, node.place, report);
    for (const entry of namedEntries(node, ALIASES, report)) {
      const to = referenceOf(textIn(entry, report), entry.key, report);
      if (to) aliases.set(entry.key, { place: entry.keyPlace, to });
    }
  }
  return aliases;
}

/** Reports an alias that stands under more than one key: its addresses would mean two things. */
export function tellClashes(groups: Readonly<Record<string, ReadonlyMap<string, Alias>>>, report: Report): void {
  const seen = new Map<string, string>();
  for (const [key, aliases] of Object.entries(groups)) {
    for (const [alias, { place }] of aliases) {
      const first = seen.get(alias);
      if (first !== undefined) {
        report.error('name-clash', place, `the alias \`${alias}\` stands under \`${first}\` and under \`${key}\``, {
          remedy: 'rename one of the two',
        });
      } else seen.set(alias, key);
    }
  }
}

/** Alias to id, without places. */
export function idsOf(aliases: ReadonlyMap<string, Alias>): Map<string, string> {
  return new Map([...aliases].map(([alias, { to }]) => [alias, to.value]));
}
