/** What a plot of differences says in words and in tables. */
import { isPresent } from '../../figures/figure.ts';
import { listed } from '../../figures/in-words.ts';
import { printQuantity } from '../../quantities/print.ts';
import {
  absences,
  type ComparedRun,
  cellsOf,
  intervalWords,
  signsSay,
  spreadsOf,
  uncertaintyText,
  verdictOf,
} from '../data/plotted-comparison.ts';
import { csv } from '../drawing/csv.ts';
import { isCut } from '../drawing/dots.ts';
import type { Drawn } from '../drawing/drawn.ts';
import type { Delta, DeltaGroup, Deltas } from './plan.ts';

/** "Differences in power and rise over ambient from rated: brisk and fast". */
export function deltasTitle({ groups, reference }: Deltas): string {
  const aliases = new Set(
    groups.flatMap(({ deltas }) => deltas.filter(({ figure }) => isPresent(figure)).map(({ alias }) => alias)),
  );
  return `Differences in ${listed(groups.map(({ what }) => what))} from ${reference.alias}: ${listed([...aliases])}`;
}

export function deltasAlt({ groups, reference }: Deltas): string {
  const told = groups.map(({ what, unit, deltas }) => `${capital(what)}: ${deltas.map((delta) => altOf(delta, unit)).join('; ')}.`);
  return `Signs for runs, right of the line where they draw more or rise higher than ${reference.alias}. ${told.join(' ')}`;
}

function altOf(delta: Delta, unit: string): string {
  return isPresent(delta.figure)
    ? `${delta.alias} ${signedText(delta, unit)}, ${verdictOf(delta.figure)}`
    : `${delta.alias} absent`;
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** "+2.71 W": a difference says its direction, all of a quantity in one unit. */
export function signedText({ figure }: Delta, unit: string): string {
  if (!isPresent(figure)) return 'absent';
  const { text } = printQuantity(figure.quantity, { unit });
  return figure.quantity.value > 0 ? `+${text}` : text;
}

export function deltasMethod({ groups, absent, reference }: Deltas): string {
  const figures = groups.map(({ deltas }) => deltas.map(({ figure }) => figure));
  return [
    `The upright line is ${reference.alias}; what both runs share, such as an instrument's offset, cancels.`,
    ...intervalWords(
      figures.flat(),
      figures.some((each) => isCut(spreadsOf(each), 0)),
    ),
    ...signsSay(figures.flat(), reference.alias),
    ...placesOf(groups),
    ...[...groups, ...absent].flatMap(({ what, deltas: all }) =>
      absences(
        `difference in ${what}`,
        all.map(({ alias, figure }) => ({ name: alias, figure })),
      ),
    ),
  ].join(' ');
}

/** "Power is that of the load at the board input." */
function placesOf(groups: readonly DeltaGroup[]): string[] {
  const power = groups.find(({ name }) => name === 'power_delta');
  const places = new Set(power?.deltas.flatMap(({ figure }) => (isPresent(figure) ? [figure.of?.at] : [])));
  if (!power) return [];
  const known = [...places].map((at) => (at === undefined ? 'at a place that is not stated' : `at the ${at}`));
  return [`Power is the mean under load, ${listed(known)}.`];
}

export function deltasCsv(groups: readonly DeltaGroup[]): string {
  const rows = groups.flatMap(({ name, unit, deltas }) =>
    deltas.map(({ alias, figure }) => {
      const [value, low, high, why] = cellsOf(figure);
      return [name, alias, value!, low!, high!, unit, verdictOf(figure), why!];
    }),
  );
  return csv([['figure', 'run', 'difference', 'low95', 'high95', 'unit', 'verdict', 'absent'], ...rows]);
}

export function deltasTable(groups: readonly DeltaGroup[], reference: ComparedRun): Drawn['table'] {
  const rows = groups.flatMap(({ what, unit, deltas }) =>
    deltas.map((delta) => [
      capital(what),
      delta.alias,
      signedText(delta, unit),
      uncertaintyText(delta.figure, unit),
      isPresent(delta.figure) ? verdictOf(delta.figure) : delta.figure.why,
    ]),
  );
  return {
    caption: `Differences from ${reference.alias}`,
    head: ['Quantity', 'Run', 'Difference', 'Uncertainty', 'Verdict'],
    rows,
  };
}
