/** The model of the method page, generated from the catalogue. */
import katex from 'katex';
import { CATALOGUE, type Definition } from '../../figures/catalogue.ts';
import { COVERAGE, shareOf, whyOutside } from '../../figures/checks/coverage.ts';
import type { CheckTable } from '../../figures/checks/results.ts';
import { renderProse } from '../../words/prose.ts';
import type { MethodEntry, MethodModel } from '../results.ts';
import { familiesOf } from './family-words.ts';
import { CHAPTERS } from './method-chapters.ts';

/** `tables`: the published values beside ours, carried out. */
export function methodModel(tables: readonly CheckTable[]): MethodModel {
  const subjects = [...new Set(CATALOGUE.map((definition) => definition.subject))];
  return {
    kind: 'method',
    subjects: subjects.map((subject) => ({
      subject,
      entries: CATALOGUE.filter((definition) => definition.subject === subject).map((definition) =>
        methodEntry(definition, tables),
      ),
    })),
    chapters: CHAPTERS.map(({ id, title, markdown }) => ({
      id,
      title,
      html: renderProse(markdown, { file: 'src/compute/pages/method-chapters.ts', line: 1 }).html,
    })),
  };
}

function methodEntry(entry: Definition, tables: readonly CheckTable[]): MethodEntry {
  const formula = katex.renderToString(entry.formula, { output: 'mathml', displayMode: true, throwOnError: true, strict: 'error' });
  const checks = tables
    .filter(({ id }) => entry.publishedChecks.includes(id))
    .map(({ id, title, fewest }) => ({ id, title, digits: fewest }));
  return { ...whole(entry), formula, checks, coverage: coverageOf(entry.name), families: familiesOf(entry.name) };
}

/** The definition with its numbers kept on the line of their unit. */
function whole(entry: Definition): Definition {
  const { definition, assumptions, notCovered, absentWhen, check } = entry;
  return {
    ...entry,
    definition: keepUnits(definition),
    assumptions: assumptions.map(keepUnits),
    notCovered: [keepUnits(notCovered[0]), ...notCovered.slice(1).map(keepUnits)],
    absentWhen: absentWhen.map(keepUnits),
    check: keepUnits(check),
  };
}

function keepUnits(text: string): string {
  return text.replaceAll(/(\d) (?=(?:%|°C|MHz|min|K|h|s)(?![A-Za-z]))/g, '$1\u00a0');
}

function coverageOf(name: string): MethodEntry['coverage'] {
  const row = COVERAGE.figures[name];
  if (!row) return null;
  const words = `${shareOf(row.expanded)} of ${row.expanded.of} where instruments state expanded uncertainties (k = 2), ${shareOf(row.limits)} of ${row.limits.of} where they state limits`;
  return { words, truth: row.truth, why: whyOutside(name) };
}
