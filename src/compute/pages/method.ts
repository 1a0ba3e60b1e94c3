/** The model of the method page, generated from the catalogue. */
import katex from 'katex';
import { CATALOGUE, type Definition } from '../../figures/catalogue.ts';
import { renderProse } from '../../words/prose.ts';
import type { MethodEntry, MethodModel } from '../results.ts';
import { CHAPTERS } from './method-chapters.ts';

export function methodModel(): MethodModel {
  const subjects = [...new Set(CATALOGUE.map((definition) => definition.subject))];
  return {
    kind: 'method',
    subjects: subjects.map((subject) => ({
      subject,
      entries: CATALOGUE.filter((definition) => definition.subject === subject).map(methodEntry),
    })),
    chapters: CHAPTERS.map(({ id, title, markdown }) => ({
      id,
      title,
      html: renderProse(markdown, { file: 'src/compute/pages/method-chapters.ts', line: 1 }).html,
    })),
  };
}

function methodEntry({
  name,
  label,
  subject,
  definition,
  formula,
  unit,
  assumptions,
  absentWhen,
  source,
}: Definition): MethodEntry {
  const mathml = katex.renderToString(formula, { output: 'mathml', displayMode: true, throwOnError: true, strict: 'error' });
  return { name, label, subject, definition, formula: mathml, unit, assumptions, absentWhen, source };
}
