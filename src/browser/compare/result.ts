/** What stands about the plot: what was found, figures, what differs besides the setting; in the words and the order of the comparison pages. */

import { comparisonModel } from '../../compute/comparison/comparison-page.ts';
import type { Gathered } from '../../compute/models/gathered.ts';
import type { ComparisonModel } from '../../compute/results.ts';
import { TABLES_SAY } from './cell-lines.ts';
import { type Content, el, headRow, scrolling, section } from './dom.ts';
import { madeFiles } from './files.ts';
import { comparedTable, conditionList, overallTable, sideBySide } from './tables.ts';

export interface Result {
  /** Above the plot. */
  readonly before: readonly HTMLElement[];
  /** Below it. */
  readonly after: readonly HTMLElement[];
}

const files = madeFiles();

/** Lays out chosen runs: `shown` under names for readers, `gathered` under their ids, as it is taken away. */
export function resultOf(shown: Gathered, gathered: Gathered, base: string): Result {
  const context = { path: 'compare/', body: '', status: 'published', notes: [], copies: [], has: () => true } as const;
  const model = comparisonModel(shown, { plots: [], undrawn: [] }, context);
  const several = model.runs.length > 1;
  return {
    before: several ? findings(model) : [runsTable(model, base)],
    after: [figures(model, base, several ? unrounded(gathered) : null), conditions(model, several, base), ...cautions(model)],
  };
}

/** The figures as `comparisons/<id>/figures.json` has them: the aliases are the ids. */
function unrounded({ reference, runs, sources, figures: all, id }: Gathered): HTMLElement {
  files.release();
  const file = {
    format: 1,
    comparison: id,
    figures: all,
    reference,
    runs: Object.fromEntries(runs.map(({ run }) => [run, run])),
    sources,
  };
  const link = files.link('figures.json', 'chosen-runs-figures.json', 'application/json', `${JSON.stringify(file, null, 2)}\n`);
  return el('p', {}, 'Machine-readable figures of the comparison, unrounded: ', link, '.');
}

function runsTable({ runs, reference }: ComparisonModel, base: string): HTMLElement {
  const rows = runs.map(({ alias, title, path, setting }) =>
    el(
      'tr',
      {},
      el(
        'th',
        { scope: 'row' },
        alias,
        alias === reference && runs.length > 1 ? el('span', { class: 'detail' }, 'reference') : null,
      ),
      el('td', {}, el('a', { href: base + path }, title)),
      el('td', {}, setting),
    ),
  );
  const caption = el(
    'caption',
    {},
    runs.length > 1 ? `Runs; the others are compared with ${reference}` : 'One run: choose others to compare it with',
  );
  return scrolling('Runs', el('table', {}, caption, headRow(['Name', 'Run', 'Setting']), el('tbody', {}, ...rows)));
}

/** As `Comparison.astro`: what differs in a sentence, then each run against the reference. */
function findings({ fairness, findings: all }: ComparisonModel): HTMLElement[] {
  const items = all.map(({ opening, differs, open }) => {
    const found = differs.length === 0 ? '' : `${differs.map(({ amount, of }) => `${amount} ${of}`).join(', ')}.`;
    return el('li', {}, opening, found, open.length > 0 ? ` ${open.join(', ')}: no difference found.` : null);
  });
  return [el('p', {}, fairness.lead), ...(items.length > 0 ? [el('ul', { class: 'findings' }, ...items)] : [])];
}

function cautions({ cautions: all }: ComparisonModel): HTMLElement[] {
  if (all.length === 0) return [];
  const items = all.map(({ done, risk }) =>
    done.length === 1 ? el('li', {}, `${done[0]} ${risk}`) : el('li', {}, risk, folded(done)),
  );
  return [el('section', { class: 'cautions', 'aria-label': 'Cautions' }, el('h2', {}, 'Cautions'), el('ul', {}, ...items))];
}

/** As `Cautions.astro`: the risk stands open, what was done in several ways folds. */
function folded(done: readonly string[]): HTMLElement {
  return el('details', {}, el('summary', {}, `Where this applies: ${done.length} findings`), listOf(done));
}

function conditions(model: ComparisonModel, several: boolean, base: string): HTMLElement {
  const { warnings, rule } = model.fairness;
  if (!several) return section('fair', 'Setting and conditions', conditionList(model.shared));
  return section(
    'fair',
    'Setting and conditions',
    listOf(warnings),
    runsTable(model, base),
    ...sideBySide(model),
    el('p', { class: 'aside' }, rule),
    ...(model.shared.length > 0 ? [el('h3', {}, 'The same in all runs'), conditionList(model.shared)] : []),
  );
}

function figures(model: ComparisonModel, base: string, download: Content): HTMLElement {
  const tables = [
    ...comparedTable(model.compared, base),
    ...overallTable(model.overall, base),
    ...comparedTable(model.own, base),
    ...model.byTest.flatMap((table) => comparedTable(table, base)),
    ...(model.inferred.length > 0 ? [el('h3', {}, 'Inferred, not declared'), listOf(model.inferred)] : []),
  ];
  return section('figures', 'Figures', model.runs.length > 1 ? el('p', {}, TABLES_SAY) : null, ...tables, download);
}

function listOf(sentences: readonly string[]): Content {
  return sentences.length === 0 ? null : el('ul', {}, ...sentences.map((sentence) => el('li', {}, sentence)));
}
