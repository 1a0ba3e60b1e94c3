/** content/comparisons/<id>.md: runs side by side against a reference run. */

import type { Comparison } from '../register.ts';
import { type Alias, idsOf, readAliases } from '../sections/aliases.ts';
import { readFormer } from '../sections/former-addresses.ts';
import { meant, oneOf } from '../values/names.ts';
import { map, optional, readShape, shape, text, textOrList } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import { cut } from '../values/values.ts';
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const COMPARISON = shape({ title: text, runs: map, reference: text, was: optional(textOrList) });

export interface StatedComparison {
  readonly runs: ReadonlyMap<string, Alias>;
  readonly comparison: Comparison;
}

export function readComparison(source: SourceFile, report: Report): StatedComparison {
  const fields = readShape(COMPARISON, source.root, 'a comparison', source.start, report);
  const runs = readAliases(fields.runs, 'runs', report);
  tellRepeated(runs, report);
  if (fields.runs?.entries.size === 1) {
    report.error('too-few', source.placeOf('runs'), 'a comparison has one run', { expected: 'two runs or more' });
  }
  const reference = referenceOf(fields.reference, [...(fields.runs?.entries.keys() ?? [])], report);
  const former = readFormer(fields.was, 'comparisons', source, report);
  return { runs, comparison: { ...itemOf(source, fields.title, report), runs: idsOf(runs), reference, ...former } };
}

function referenceOf(node: TextNode | undefined, aliases: readonly string[], report: Report): string {
  if (!node || aliases.length === 0) return '';
  if (!aliases.includes(node.text)) {
    report.error('reference-not-an-alias', node.place, `\`reference\` is \`${cut(node.text)}\``, {
      expected: `an alias of this comparison: ${oneOf(aliases)}`,
      ...meant(node.text, aliases),
    });
  }
  return node.text;
}

function tellRepeated(runs: ReadonlyMap<string, Alias>, report: Report): void {
  const seen = new Map<string, string>();
  for (const [alias, { to }] of runs) {
    const first = seen.get(to.value);
    if (first !== undefined) {
      report.error('repeated-run', to.place, `\`${alias}\` and \`${first}\` are the same run, \`${to.value}\``, {
        remedy: 'keep one of the two',
      });
    } else seen.set(to.value, alias);
  }
}
