/** content/comparisons/<id>.md: runs side by side, by setting, against the runs of a reference setting. */

import type { Comparison } from '../register.ts';
import { ALIASES, type Alias } from '../sections/aliases.ts';
import { readFormer } from '../sections/former-addresses.ts';
import { RETESTS } from '../sections/retests.ts';
import { referenceOf } from '../sections/shared-keys.ts';
import { namedEntries } from '../values/mapping.ts';
import { meant, oneOf } from '../values/names.ts';
import { map, optional, readShape, required, shape, text, textOrList } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Reference } from '../values/stated-value.ts';
import { cut, textsOf, wordOf } from '../values/values.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

export const COMPARISON = shape({
  title: required(text, 'what is compared, for readers', { form: 'words', example: 'Three clock settings' }),
  runs: required(map, 'the settings, each under a name, with its run or a list of its runs', {
    means: 'names, each with the id of a run or a list of them',
    example: 'rated: larch-rated',
  }),
  reference: required(text, 'the setting with which the others are compared', { means: 'one of the names below `runs`' }),
  repeats: optional(
    textOrList,
    'two or more runs of another setting of the specimen: they say how far runs lie apart, and are not compared',
    {
      form: 'id',
      example: '[larch-slow, larch-slow-again]',
    },
  ),
  quoted: optional(textOrList, 'figures of others, to stand beside the settings', { form: 'id', example: 'hot-boxes' }),
  retests: optional(text, 'whether a retest takes the place of its run', { words: RETESTS, otherwise: 'stay' }),
  was: optional(textOrList, 'where it stood before, so that old links still lead to it', {
    form: 'page',
    example: 'comparisons/old-id/',
  }),
});

/** The runs of a setting, with their places. */
export interface StatedSetting {
  readonly alias: string;
  readonly runs: readonly Reference[];
}

export interface StatedComparison {
  readonly settings: readonly StatedSetting[];
  readonly repeats: readonly Reference[];
  readonly quoted: readonly Reference[];
  readonly comparison: Comparison;
}

export function readComparison(source: SourceFile, report: Report): StatedComparison {
  const fields = readShape(COMPARISON, source.root, 'a comparison', source.start, report);
  const settings = readSettings(fields.runs, report);
  const repeats = (textsOf(fields.repeats, 'repeats', source.placeOf('repeats'), report) ?? []).flatMap(
    (node) => referenceOf(node, 'repeats', report) ?? [],
  );
  const quoted = (textsOf(fields.quoted, 'quoted', source.placeOf('quoted'), report) ?? []).flatMap(
    (node) => referenceOf(node, 'quoted', report) ?? [],
  );
  tellRepeated(settings, repeats, report);
  if (fields.runs?.entries.size === 1) {
    report.error('too-few', source.placeOf('runs'), 'a comparison has one setting', { expected: 'two settings or more' });
  }
  const reference = readReference(fields.reference, [...(fields.runs?.entries.keys() ?? [])], report);
  const retests = wordOf(fields.retests, 'retests', RETESTS, report);
  const former = readFormer(fields.was, 'comparisons', source, report);
  const ids = settings.map(({ alias, runs }) => [alias, runs.map(({ value }) => value)] as const);
  const comparison = {
    ...itemOf(source, fields.title, report),
    settings: new Map(ids),
    runs: new Map(ids.flatMap(([alias, runs]) => runs.map((run, index) => [runAlias(alias, index), run] as const))),
    repeats: repeats.map(({ value }) => value),
    reference,
    ...(quoted.length > 0 ? { quoted: quoted.map(({ value }) => value) } : {}),
    ...(retests === 'follow' ? { followsRetests: true } : {}),
    ...former,
  };
  return { settings, repeats, quoted, comparison };
}

/** How a run is named beside others: the first one of a setting as the setting, the next ones with their number, which no alias can have. */
function runAlias(setting: string, index: number): string {
  return index === 0 ? setting : `${setting} ${index + 1}`;
}

/** Runs by alias: one, or a list. */
function readSettings(node: MapNode | undefined, report: Report): StatedSetting[] {
  if (node === undefined) return [];
  return namedEntries(node, ALIASES, report).map(({ key, keyPlace, value }) => {
    const runs = value.kind === 'text' || value.kind === 'list' ? textsOf(value, key, keyPlace, report) : undefined;
    if (value.kind === 'map')
      report.error('wrong-kind', value.place, `\`${key}\` is a mapping`, { expected: 'a run, or a list of runs' });
    return { alias: key, runs: (runs ?? []).flatMap((run) => referenceOf(run, key, report) ?? []) };
  });
}

/** Every run with its alias, for what notes and comparisons have in common. */
export function aliasesOf({ settings, repeats }: StatedComparison): ReadonlyMap<string, Alias> {
  const runs = settings.flatMap(({ alias, runs }) =>
    runs.map((to, index): [string, Alias] => [runAlias(alias, index), { place: to.place, to }]),
  );
  return new Map([...runs, ...repeats.map((to, index): [string, Alias] => [` ${index}`, { place: to.place, to }])]);
}

function readReference(node: TextNode | undefined, aliases: readonly string[], report: Report): string {
  if (!node || aliases.length === 0) return '';
  if (!aliases.includes(node.text)) {
    report.error('reference-not-an-alias', node.place, `\`reference\` is \`${cut(node.text)}\``, {
      expected: `an alias of this comparison: ${oneOf(aliases)}`,
      ...meant(node.text, aliases),
    });
  }
  return node.text;
}

function tellRepeated(settings: readonly StatedSetting[], repeats: readonly Reference[], report: Report): void {
  const seen = new Map<string, string>();
  for (const { alias, runs } of [...settings, { alias: 'repeats', runs: repeats }]) {
    for (const { value, place } of runs) {
      const first = seen.get(value);
      if (first !== undefined) {
        report.error('repeated-run', place, `the run \`${value}\` stands under \`${first}\` and under \`${alias}\``, {
          remedy: 'keep one of the two',
        });
      } else seen.set(value, alias);
    }
  }
}
