/** What a plot of scores says in words and in tables. */
import { isPresent } from '../../figures/figure.ts';
import { listed } from '../../figures/in-words.ts';
import {
  absences,
  cellsOf,
  differs,
  intervalWords,
  logSpreads,
  signsSay,
  uncertaintyText,
  valueText,
  verdictOf,
} from '../data/plotted-comparison.ts';
import { csv } from '../drawing/csv.ts';
import { isCut } from '../drawing/dots.ts';
import type { Drawn } from '../drawing/drawn.ts';
import type { ScoreRow, Scores } from './plan.ts';

/** "Speedup by test, against rated: brisk and fast". */
export function scoresTitle({ rows, reference }: Scores): string {
  return `Speedup by test, against ${reference.alias}: ${listed(rows[0]!.scores.map(({ alias }) => alias))}`;
}

/** Tests that an alternative tells one by one; of more it tells the first and the last of the order. */
const TOLD = 8;

export function scoresAlt({ rows, reference }: Scores): string {
  const told = rows.length <= TOLD ? rows : [...rows.slice(0, TOLD / 2), ...rows.slice(-TOLD / 2)];
  const more = rows.length > told.length ? ` ${rows.length - told.length} tests between these are in the table.` : '';
  return `Signs for runs in a row for each test, right of the line where they are faster than ${reference.alias}. ${told.map(altOf).join(' ')}${more}`;
}

function altOf({ title, scores }: ScoreRow): string {
  return `${title}: ${listed(scores.map(({ alias, figure }) => `${alias} ${valueText(figure)}`))}.`;
}

export function scoresMethod({ rows, reference }: Scores): string {
  const figures = rows.flatMap(({ scores }) => scores.map(({ figure }) => figure));
  return [
    `Multiples of the score of ${reference.alias} where higher is better, the other way round where lower is: right is faster. Equal distances are equal factors, so that half and double stand equally far from 1.`,
    ...(rows.length > 2 ? ['Tests are in the order of their gain.'] : []),
    ...intervalWords(figures, isCut(logSpreads(figures), 0)),
    ...signsSay(figures, reference.alias),
    ...absences(
      'sign',
      rows.flatMap(({ title, scores: all }) => all.map(({ alias, figure }) => ({ name: `${alias} in ${title}`, figure }))),
    ),
  ].join(' ');
}

export function scoresCsv({ rows }: Scores): string {
  const told = rows.flatMap(({ title, scores }) =>
    scores.map(({ alias, figure }) => {
      const [value, low, high, why] = cellsOf(figure);
      return [title, alias, value!, low!, high!, verdictOf(figure), why!];
    }),
  );
  return csv([['test', 'run', 'speedup', 'low95', 'high95', 'verdict', 'absent'], ...told]);
}

/** A row for each test while that stays short enough to read, with a column for each run. */
export function scoresTable({ rows, reference }: Scores): Drawn['table'] {
  const aliases = rows[0]!.scores.map(({ alias }) => alias);
  return {
    caption: `Speedup by test, as multiples of ${reference.alias}`,
    head: ['Test', ...aliases],
    rows: rows.map(({ title, scores }) => [title, ...scores.map(({ figure }) => cellOf(figure))]),
  };
}

function cellOf(figure: ScoreRow['scores'][number]['figure']): string {
  if (!isPresent(figure)) return 'absent';
  const untold = differs(figure) ? '' : `, ${verdictOf(figure)}`;
  return `${[valueText(figure), uncertaintyText(figure).replace(/ \(95.%\)$/, '')].filter((text) => text !== '').join(' ')}${untold}`;
}
