/** The tables of `npm run accuracy` as text. */
import { type CoverageTable, inBand, shareOf } from '../../figures/checks/coverage.ts';
import { type FamilyRow, type FamilyTable, faultsOf } from '../../figures/checks/families.ts';
import type { CheckTable } from '../../figures/checks/results.ts';

/** A table of published values beside ours. */
export function checkText({ title, source, rows }: CheckTable): string {
  const head = ['', 'published', 'ours', 'digits', 'needed', '', ''];
  const body = rows.map(({ what, published, ours, reached, required, demand, agrees }) => [
    what,
    published,
    ours,
    reached,
    required,
    agrees ? 'agrees' : 'FALLS SHORT',
    demand,
  ]);
  return [title, `source: ${source}`, ...aligned([head, ...body])].join('\n');
}

/** The table of coverage. */
export function coverageText({ runs, seed, figures }: CoverageTable): string {
  const head = ['', 'errors within limits', '', 'errors with k = 2', '', ''];
  const body = Object.entries(figures).map(([name, { limits, expanded, kind }]) => [
    name,
    shareOf(limits),
    `of ${limits.of}`,
    `${shareOf(expanded)}${inBand(expanded) ? '' : ' !'}`,
    `of ${expanded.of}`,
    kind,
  ]);
  const title = `Share of 95 % intervals that hold the truth, in ${runs} simulated runs of each kind from seed ${seed} (! outside 93 % to 97 %)`;
  return [title, ...aligned([head, ...body])].join('\n');
}

/** The table of one family: a line for each question in each cell, with what is wrong at its end. */
export function familyText(name: string, { title, words, trials, rows }: FamilyTable): string {
  const head = ['', 'asked', 'present', 'holds', 'half width', 'to known', 'false bounds', 'pairs apart', 'absent', 'said', ''];
  const body = rows.map((row) => [row.cell, row.asked, ...numbersOf(row), faultsOf(row).join('; ')]);
  return [`${title} (${name}), ${trials} trials of each`, words, ...aligned([head, ...body])].join('\n');
}

function numbersOf(row: FamilyRow): readonly string[] {
  const { present, held, half, unit, ratio, bounds, falseBounds, absent, caused, pairs, apart, said, trials } = row;
  const share = (count: number | undefined, of: number | undefined) =>
    count === undefined || of === undefined ? '' : shareOf({ held: count, of });
  return [
    share(present, trials),
    share(held, present),
    half === undefined ? '' : `${half} ${unit}`,
    ratio === undefined ? '' : String(ratio),
    bounds === undefined ? '' : `${falseBounds} of ${bounds}`,
    share(apart, pairs),
    absent === undefined ? '' : `${share(absent, trials)}, cause named ${share(caused, trials)}`,
    share(said, trials),
  ];
}

/** Lines whose columns start at the same place. */
function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) => `  ${row.map((cell, column) => cell.padEnd(widths[column]!)).join('  ')}`.trimEnd());
}
