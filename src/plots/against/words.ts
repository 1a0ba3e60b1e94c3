/** What a plot of one figure against another says in words and in tables. */
import { isPresent, type PresentFigure } from '../../figures/figure.ts';
import { listed } from '../../figures/in-words.ts';
import { isRefusal, subtract } from '../../quantities/arithmetic.ts';
import { printQuantity } from '../../quantities/print.ts';
import { interval95 } from '../../quantities/uncertainty.ts';
import { absences, cellsOf, intervalWords, toldText, uncertaintyText, valueText } from '../data/plotted-comparison.ts';
import { csv } from '../drawing/csv.ts';
import type { Drawn } from '../drawing/drawn.ts';
import type { Against, AgainstPoint } from './plan.ts';

/** The last step along the axis: "From quick to fast, load power rises by 1.07 W and mean clock by 99 MHz". */
export function againstTitle({ x, y, points }: Against): string {
  const [from, to] = points.slice(-2) as [AgainstPoint, AgainstPoint];
  const along = stepOf(from.x, to.x);
  const up = stepOf(from.y, to.y);
  const first = along === null ? `${x.label} stays about the same` : `${x.label} ${along.verb} by ${along.text}`;
  const second =
    up === null
      ? `while ${y.label} stays about the same`
      : `and ${y.label} ${along?.verb === up.verb ? '' : `${up.verb} `}by ${up.text}`;
  return `From ${from.alias} to ${to.alias}, ${first} ${second}`;
}

/** How a figure differs between two runs; null where its 95 % interval holds zero or is not known. */
function stepOf(from: PresentFigure, to: PresentFigure): { readonly verb: string; readonly text: string } | null {
  const step = subtract(to.quantity, from.quantity);
  if (isRefusal(step)) return null;
  const interval = interval95(step);
  if (interval === null || (interval[0] <= 0 && interval[1] >= 0)) return null;
  const size = step.value < 0 ? subtract(from.quantity, to.quantity) : step;
  return isRefusal(size) ? null : { verb: step.value < 0 ? 'falls' : 'rises', text: printQuantity(size).text };
}

export function againstAlt({ x, y, points }: Against): string {
  const told = points.map(
    ({ alias, x: along, y: up, set }) =>
      `${alias}: ${y.label} ${toldText(up)}${set ? `, set to ${printQuantity(set).text}` : ''}, ${x.label} ${toldText(along)}`,
  );
  return `A sign for each run, ${y.label} over ${x.label}. ${told.join('; ')}.`;
}

/** What its strokes are. */
export function againstAbout({ points }: Against): string {
  const figures = points.flatMap((point) => [point.x, point.y]);
  return [...strokeWords(points), ...intervalWords(figures)].join(' ');
}

function strokeWords(points: Against['points']): string[] {
  return points.some(({ set }) => set) ? ['The stroke above a sign is the clock that was set.'] : [];
}

export function againstMethod({ x, y, points, runs }: Against): string {
  const figures = points.flatMap((point) => [point.x, point.y]);
  const why = runs.flatMap((run) => [run.y, run.x].map((figure) => ({ name: run.alias, figure })));
  return [
    `${capital(y.label)} over ${x.label}, a sign a run: ${listed(points.map(({ alias }) => alias))}.`,
    ...strokeWords(points),
    ...intervalWords(figures),
    ...absences('sign', why),
  ].join(' ');
}

export function againstCsv({ x, y, runs }: Against): string {
  const columns = (label: string) => [label, `${label} low95`, `${label} high95`].map((text) => text.replaceAll(' ', '_'));
  const rows = runs.map((run) => {
    const [up, along] = [cellsOf(run.y), cellsOf(run.x)];
    const why = [...new Set([up[3], along[3]])].filter((text) => text !== '').join(' ');
    return [run.alias, ...up.slice(0, 3), ...along.slice(0, 3), why];
  });
  return csv([['run', ...columns(y.label), ...columns(x.label), 'absent'], ...rows]);
}

export function againstTable({ x, y, runs }: Against): Drawn['table'] {
  const both = (figure: Against['runs'][number]['x']) => [valueText(figure), isPresent(figure) ? uncertaintyText(figure) : ''];
  return {
    caption: `${capital(y.label)} and ${x.label}`,
    head: ['Run', capital(y.label), 'Uncertainty', capital(x.label), 'Uncertainty'],
    rows: runs.map((run) => [run.alias, ...both(run.y), ...both(run.x)]),
  };
}

export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
