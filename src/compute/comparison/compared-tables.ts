/** The tables of a comparison's page: its own figures by run and by test, and those of its runs beside each other. */
import { CATALOGUE, definitionOf } from '../../figures/catalogue.ts';
import type { Setting } from '../../figures/comparison/compared.ts';
import { differencesTo, sideBySideAddresses } from '../../figures/comparison/side-by-side.ts';
import { RUNS_DIFFER } from '../../figures/comparison/verdict-words.ts';
import { type Figure, type FigureMap, isPresent } from '../../figures/figure.ts';
import { fromText, shownFigure } from '../contents/figure-text.ts';
import type { ComparedTable, ShownFigure } from '../results.ts';
import { type CellFigures, comparedRow } from './compared-cells.ts';

type Figures = FigureMap;
type Row = ComparedTable['rows'][number];

/** A comparison with its figures read back. */
export interface ReadComparison {
  readonly figures: Figures;
  readonly reference: Setting;
  /** All settings, the reference among them, in the author's order. */
  readonly runs: readonly Setting[];
}

/** Figures of a run against the reference over all tests: a row a figure, a column a run. */
export function comparedTable({ figures, reference, runs }: ReadComparison): ComparedTable {
  const others = runs.filter((run) => run !== reference);
  const own = [...figures].filter(([, { of }]) => of?.run !== undefined && of.test === undefined && of.figure === undefined);
  const rows = namesOf(own).map((name) => {
    const found = (alias: string) => own.find(([, figure]) => figure.name === name && figure.of?.run === alias);
    return comparedRow(
      { ...labelled(name), detail: '' },
      others.map(({ alias }) => withCould(figures, cellOf(found(alias)))),
    );
  });
  return table(`Against ${reference.alias}`, '', others, rows);
}

/** Figures of all runs together. */
export function overallFigures({ figures, runs }: ReadComparison): ShownFigure[] {
  const names = new Map(runs.flatMap(({ alias, runs: own }) => own.map((run) => [run, alias] as const)));
  return [...figures]
    .filter(([, { of }]) => of?.run === undefined && of?.test === undefined)
    .map(([address, figure]) => ({
      ...shownFigure(address, figure),
      ...(isPresent(figure) && { from: fromText(figure.from, names) }),
    }));
}

/** By test: scores with their speedups, then each other figure that tests have. */
export function testTables(read: ReadComparison): ComparedTable[] {
  const tests = testsOf(read);
  if (tests.size === 0) return [];
  const single = [...read.figures].filter(([, { of }]) => of?.run === undefined && of?.test !== undefined);
  const ratios = [...read.figures].filter(
    ([, { name, of }]) => of?.run !== undefined && of.test !== undefined && of.figure === undefined && name !== 'speedup',
  );
  return [
    scoreTable(read, tests),
    ...(single.length === 0 ? [] : [acrossTable(single, tests)]),
    ...namesOf(ratios).map((name) => ratioTable(read, tests, name)),
  ];
}

/** The settings' own figures, each with its difference against the reference. */
export function ownTable({ reference, runs }: ReadComparison): ComparedTable {
  const others = runs.filter((run) => run !== reference);
  const differences = differencesTo(reference, others);
  const rows = sideBySideAddresses(runs).flatMap((address): Row[] => {
    const own = runs.map(({ figures }) => figures.get(address));
    const against = runs.map((run) => differences.get(run)?.get(address));
    const present = own.filter((figure) => figure !== undefined && isPresent(figure));
    if (present.length === 0 && address.includes('.')) return [];
    const head = { ...labelled(own.find((figure) => figure !== undefined)!.name), detail: detailOf(own) };
    return [
      comparedRow(
        head,
        own.map((figure, index): CellFigures => ({ address: '', figure, difference: against[index] })),
      ),
    ];
  });
  const each = runs.some((setting) => setting.runs.length > 1) ? 'Each setting, as the mean of its runs' : 'Each run';
  return table(`${each}, and below it its difference from ${reference.alias}`, '', runs, rows);
}

function scoreTable({ figures, reference, runs }: ReadComparison, tests: ReadonlyMap<string, string>): ComparedTable {
  const rows = [...tests].map(([test, title]): Row => {
    const cells = runs.map(({ alias, figures: own }): CellFigures => {
      const [address = '', ratio] = entryOf(figures, 'speedup', alias, test) ?? [];
      return withCould(figures, { address, figure: own.get(`score.${test}`), ratio });
    });
    return comparedRow({ name: '', label: title, detail: betterOf(runs, test) }, cells);
  });
  return table(`Scores by test, and below them the speedup against ${reference.alias}`, 'speedup', runs, rows);
}

function ratioTable({ figures, reference, runs }: ReadComparison, tests: ReadonlyMap<string, string>, name: string): ComparedTable {
  const others = runs.filter((run) => run !== reference);
  const rows = [...tests].map(([test, title]): Row => {
    const cells = others.map(({ alias }) => withCould(figures, cellOf(entryOf(figures, name, alias, test))));
    return comparedRow({ name: '', label: title, detail: '' }, cells);
  });
  return table(`${capital(labelled(name).label)} by test, against ${reference.alias}`, name, others, withSome(rows));
}

/** Figures of all runs together by test: a column a figure. */
function acrossTable(single: readonly (readonly [string, Figure])[], tests: ReadonlyMap<string, string>): ComparedTable {
  const names = namesOf(single);
  const rows = [...tests].map(([test, title]): Row => {
    const found = (name: string) => single.find(([, figure]) => figure.name === name && figure.of?.test === test);
    return comparedRow(
      { name: '', label: title, detail: '' },
      names.map((name) => cellOf(found(name))),
    );
  });
  const columns = names.map((name) => ({ alias: labelled(name).label }));
  return table('Over all runs, by test', '', columns, withSome(rows));
}

function table(caption: string, name: string, columns: readonly { readonly alias: string }[], rows: readonly Row[]): ComparedTable {
  const aliases = columns.map(({ alias }) => alias);
  const unsaid = rows.some(({ cells }) =>
    cells.some((cell) => cell.figure?.verdict === RUNS_DIFFER || cell.against?.verdict === RUNS_DIFFER),
  );
  return {
    caption: `${caption} (95\u00a0% intervals)`,
    name,
    columns: aliases,
    rows: rows.map(({ cells, ...head }) => ({ ...head, cells: cells.map(withoutUsual) })),
    absent: absences(rows, aliases),
    unsaid: unsaid ? 'Where nothing is said below a difference or a ratio, these two runs differ.' : '',
  };
}

/** Most cells of runs that were made once would say the same: it is said once, above them. */
function withoutUsual({ figure, against, ...cell }: Row['cells'][number]): Row['cells'][number] {
  const silent = (shown: typeof figure) => (shown?.verdict === RUNS_DIFFER ? { ...shown, verdict: '' } : shown);
  return { ...cell, figure: silent(figure), against: silent(against) };
}

/** "time to throttle (rated, quick): No throttling was seen." Each reason once, with all that it explains. */
function absences(rows: readonly Row[], columns: readonly string[]): string[] {
  const reasons = new Map<string, { readonly labels: Set<string>; readonly names: Set<string> }>();
  for (const { label, detail, cells } of rows) {
    for (const [index, { figure, against }] of cells.entries()) {
      const why = figure?.absent ?? against?.absent;
      if (why === undefined) continue;
      const explained = reasons.get(why) ?? { labels: new Set(), names: new Set() };
      reasons.set(why, explained);
      explained.labels.add([label, detail].filter((part) => part !== '').join(', '));
      explained.names.add(columns[index]!);
    }
  }
  return [...reasons].map(([why, { labels, names }]) => `${[...labels].join('; ')} (${[...names].join(', ')}): ${why}`);
}

function withSome(rows: readonly Row[]): Row[] {
  return rows.filter(({ cells }) => cells.some(({ figure }) => figure !== null));
}

function cellOf(entry: readonly [string, Figure] | undefined): CellFigures {
  const [address = '', figure] = entry ?? [];
  return { address, figure };
}

/** What the comparison could have told, beside a figure that it judged. */
function withCould(figures: Figures, cell: CellFigures): CellFigures {
  const [least, runs] = ['smallest_told', 'runs_to_tell'].map((name) => figures.get(`${name}.${cell.address}`));
  return { ...cell, least, runs };
}

function entryOf(figures: Figures, name: string, alias: string, test: string): readonly [string, Figure] | undefined {
  return [...figures].find(([, figure]) => figure.name === name && figure.of?.run === alias && figure.of.test === test);
}

/** Tests that any run has a score of, by id with their titles. */
function testsOf({ runs }: ReadComparison): Map<string, string> {
  const scores = runs.flatMap(({ figures }) => [...figures.values()].filter(({ name }) => name === 'score'));
  return new Map(scores.map(({ of }) => [String(of?.test), String(of?.title ?? of?.test)]));
}

function betterOf(runs: readonly Setting[], test: string): string {
  const better = new Set(runs.flatMap(({ figures }) => figures.get(`score.${test}`)?.of?.better ?? []));
  return better.size === 1 ? `${[...better][0]} means faster` : '';
}

/** The channel, spot or place that the figures of a row have in common. */
function detailOf(figures: readonly (Figure | undefined)[]): string {
  const said = (['spot_title', 'channel', 'at', 'over'] as const).flatMap((key) => {
    const texts = new Set(figures.flatMap((figure) => figure?.of?.[key] ?? []));
    return texts.size === 1 ? [String([...texts][0])] : [];
  });
  return said.join(', ');
}

/** In the order of the catalogue: what is read back from JSON has the order of its letters. */
function namesOf(entries: readonly (readonly [string, Figure])[]): string[] {
  const names = new Set(entries.map(([, { name }]) => name));
  return CATALOGUE.flatMap(({ name }) => (names.has(name) ? [name] : []));
}

function labelled(name: string): { readonly name: string; readonly label: string } {
  return { name, label: definitionOf(name)?.label ?? name.replaceAll('_', ' ') };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
