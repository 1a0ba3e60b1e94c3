/** One figure of several runs against another: a sign a run, so that what is gained and what it costs stand in one picture. */

import { definitionOf } from '../../figures/catalogue.ts';
import { type Figure, type FigureMap, isPresent, type PresentFigure } from '../../figures/figure.ts';
import { error, type Problem } from '../../problem.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { PlotRequest } from '../../register/requests.ts';
import { meant } from '../../register/values/names.ts';
import { runName } from '../data/figure-text.ts';
import { tooMany } from '../data/requested-channels.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import { MOST_STYLES } from '../drawing/palette.ts';
import type { Plan, Planned } from '../drawing/plan.ts';
import { runStyles } from '../drawing/styles.ts';
import { type DisplayUnit, displayUnit } from '../drawing/wording.ts';
import { layOutAgainst } from './layout.ts';
import { againstAbout, againstAlt, againstCsv, againstMethod, againstTable, againstTitle } from './words.ts';

/** A run with both figures. */
export interface AgainstPoint {
  readonly alias: string;
  /** Style, from 0. */
  readonly k: number;
  readonly x: PresentFigure;
  readonly y: PresentFigure;
  /** The clock that was set, where the upright axis is a clock that was delivered. */
  readonly set?: Quantity;
}

export interface AgainstAxis {
  /** "load power". */
  readonly label: string;
  readonly display: DisplayUnit;
}

export interface Against {
  readonly x: AgainstAxis;
  readonly y: AgainstAxis;
  /** By x, ascending. */
  readonly points: readonly AgainstPoint[];
  /** All runs, with what they have of both. */
  readonly runs: readonly { readonly alias: string; readonly x: Figure; readonly y: Figure }[];
}

/** Plans the two figures named by `of`, the upright one first. */
export function planAgainst(request: PlotRequest, subjects: readonly PlotSubject[]): Planned {
  if (subjects.length > MOST_STYLES) return [tooMany(request, subjects.length)];
  const [of, over, ...more] = request.of ?? [];
  if (of === undefined || over === undefined || more.length > 0) return [notTwo(request)];
  const problems = [of, over].flatMap((address) => unknownFigure(request, subjects, address));
  if (problems.length > 0) return problems;
  const runs = subjects.map((subject) => ({ alias: runName(subject), x: figureAt(subject, over), y: figureAt(subject, of) }));
  const styles = runStyles(request.runs);
  const points = runs
    .flatMap(({ alias, x, y }, i) =>
      isPresent(x) && isPresent(y) ? [{ alias, k: styles[i]!, x, y, ...setClock(subjects[i]!, y) }] : [],
    )
    .toSorted((a, b) => a.x.quantity.value - b.x.quantity.value);
  if (points.length < 2) return [tooFew(request, of, over)];
  const against: Against = {
    x: axisOf(
      over,
      points.map(({ x }) => x),
    ),
    y: axisOf(
      of,
      points.map(({ y }) => y),
    ),
    points,
    runs,
  };
  return {
    title: request.title ?? againstTitle(against),
    about: againstAbout(against),
    alt: againstAlt(against),
    method: againstMethod(against),
    csv: againstCsv(against),
    table: againstTable(against),
    layOut: (size) => layOutAgainst(against, size),
    shown: points.map(({ alias, k }) => ({ name: alias, k })),
  } satisfies Plan;
}

function figureAt({ derived, title }: PlotSubject, address: string): Figure {
  const figures: Omit<FigureMap, 'get'> & { get(address: string): Figure | undefined } = derived.figures;
  return figures.get(address) ?? { name: 'difference', absent: 'operand-absent', why: `${title} has no ${address}.` };
}

function axisOf(address: string, figures: readonly PresentFigure[]): AgainstAxis {
  const [first] = figures as [PresentFigure];
  const largest = Math.max(...figures.map(({ quantity }) => Math.abs(quantity.value)));
  const [name = '', ...rest] = address.split('.');
  return {
    label: [definitionOf(name)?.label ?? name, ...rest].join(', '),
    display: displayUnit('other', first.quantity.unit, largest),
  };
}

/** A set clock beside one that was delivered. */
function setClock({ context }: PlotSubject, { name, quantity }: PresentFigure): { readonly set?: Quantity } {
  const set = context.setting.clock;
  return quantity.unit === 'Hz' && name === 'mean_clock' && set ? { set } : {};
}

function notTwo(request: PlotRequest): Problem {
  return error(
    'request-attribute',
    request.place,
    `a plot of the kind \`against\` with ${request.of?.length ?? 0} figures in \`of\``,
    {
      expected: 'two figures, such as `of="mean_clock load_power"`: the first upright, the second along',
    },
  );
}

function unknownFigure(request: PlotRequest, subjects: readonly PlotSubject[], address: string): Problem[] {
  const known = new Set(subjects.flatMap(({ derived }) => [...derived.figures.keys()]));
  if (known.has(address)) return [];
  return [error('unknown-figure', request.place, `no run of this plot has the figure \`${address}\``, meant(address, known))];
}

function tooFew(request: PlotRequest, of: string, over: string): Problem {
  return error('request-attribute', request.place, `fewer than two runs have both \`${of}\` and \`${over}\``, {
    remedy: 'name other runs or other figures',
  });
}
