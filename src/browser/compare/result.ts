/** What stands below the plot: the runs, what differs besides the setting, figures, conditions; in the words of the comparison pages. */

import type { Gathered } from '../../compute/compared/gathered.ts';
import { comparisonModel } from '../../compute/pages/comparison.ts';
import type { ComparisonModel } from '../../compute/results.ts';
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

/** Lays out chosen runs. */
export function resultOf(gathered: Gathered, base: string): Result {
  const context = { path: 'compare/', body: '', status: 'published', notes: [], copies: [], has: () => true } as const;
  const model = comparisonModel(gathered, { plots: [], undrawn: [] }, context);
  const several = model.runs.length > 1;
  return {
    before: [runsTable(model, base), ...cautions(model), ...(several ? [fairness(model)] : [])],
    after: [figures(model, base, several ? unrounded(gathered) : null), conditions(model)],
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
  return el('p', {}, 'Figures of the comparison, unrounded, for programs: ', link, '.');
}

function runsTable({ runs, reference }: ComparisonModel, base: string): HTMLElement {
  const rows = runs.map(({ alias, title, path, date, setting }) =>
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
      el('td', { class: 'number' }, date),
      el('td', {}, setting),
    ),
  );
  const caption = el(
    'caption',
    {},
    runs.length > 1 ? `Runs; the others are compared with ${reference}` : 'One run: choose others to compare it with',
  );
  return scrolling('Runs', el('table', {}, caption, headRow(['Id', 'Run', 'Date', 'Setting']), el('tbody', {}, ...rows)));
}

function cautions({ cautions: all }: ComparisonModel): HTMLElement[] {
  if (all.length === 0) return [];
  const items = all.map(({ done, risk }) => el('li', {}, `${done.join(' ')} ${risk}`));
  return [el('section', { class: 'cautions', 'aria-label': 'Cautions' }, el('h2', {}, 'Cautions'), el('ul', {}, ...items))];
}

function fairness({ fairness: { lead, warnings, rule } }: ComparisonModel): HTMLElement {
  const list = warnings.length === 0 ? null : el('ul', {}, ...warnings.map((warning) => el('li', {}, warning)));
  return section('fair', 'What differs besides the setting', el('p', {}, lead), list, el('p', { class: 'aside' }, rule));
}

function figures(model: ComparisonModel, base: string, download: Content): HTMLElement {
  const told =
    'Two runs are told apart where the 95 % interval leaves out the value that equal runs would have. What both share, such as the error of one instrument, cancels in what is between them.';
  const tables = [
    ...comparedTable(model.compared, base),
    ...overallTable(model.overall, base),
    ...comparedTable(model.own, base),
    ...model.byTest.flatMap((table) => comparedTable(table, base)),
  ];
  return section('figures', 'Figures', model.runs.length > 1 ? el('p', {}, told) : null, ...tables, download);
}

function conditions(model: ComparisonModel): HTMLElement {
  return section('conditions', 'Setting and conditions side by side', conditionList(model.shared), ...sideBySide(model));
}
