/** The front door: what a note asks to be drawn and the runs it names → the drawing, its words, its data. */

import { listed } from '../figures/in-words.ts';
import { error, type Place, type Problem } from '../problem.ts';
import type { PlotRequest } from '../register/requests.ts';
import { guardNote } from './drawing/csv.ts';
import { drawIn } from './drawing/draw-in.ts';
import type { AttemptsSubject, ComparedSubject, Drawn, PlotSubject } from './drawing/drawn.ts';
import { LIGHT } from './drawing/palette.ts';
import { isPlan, type Plan } from './drawing/plan.ts';
import { png } from './drawing/png.ts';
import { NARROW, WIDE } from './drawing/size.ts';
import { standalone } from './drawing/svg.ts';
import { plan } from './specify.ts';
import { drawStills } from './stills/draw-stills.ts';

/**
 * Draws a plot: inline SVG for a wide and a narrow column, an SVG and, where asked for, a PNG to take away, data as CSV and as a short table.
 *
 * @param subjects The runs of the request, in its order.
 * @param prefix Makes the ids of the SVGs unique in their page.
 * @param attempts The attempts of a request of the kind `stability`.
 * @param compared The comparison of a request that draws one's figures.
 * @param pictures Which pictures are made of it besides.
 * @returns With problems, located at the request, when it asks for what is not there; the drawing is then empty.
 */
export async function draw(
  request: PlotRequest,
  subjects: readonly PlotSubject[],
  prefix: string,
  attempts: readonly AttemptsSubject[] = [],
  compared: ComparedSubject | null = null,
  pictures: Pictures = {},
): Promise<Drawn> {
  const planned = plan(request, subjects, attempts, compared);
  if (!isPlan(planned)) return undrawn(request, planned);
  const title = aloneTitle(planned.title, request, subjects);
  return drawPlan(planned, request.id, prefix, { title, place: request.place, ...pictures });
}

/** Pictures that not every plot has: each costs several times its drawing. */
export interface Pictures {
  /** Whether a PNG can be taken away: where the plot is meant to be shown elsewhere. */
  readonly png?: boolean;
  /** Whether pictures for video and feeds are made of it. */
  readonly pictured?: boolean;
}

/** What a drawing needs that its plan does not say. */
export interface Setting extends Pictures {
  /** Title of the picture away from its page, where it differs. */
  readonly title?: string;
  /** Where warnings of the chart library are reported; without it they are thrown, as a fault of the program. */
  readonly place?: Place;
}

/** Draws a plan: the same for plots that no note asks for. `prefix` makes the ids of the SVGs unique in their page. */
export async function drawPlan(planned: Plan, id: string, prefix: string, setting: Setting = {}): Promise<Drawn> {
  const [wide, narrow] = [await drawIn(WIDE, planned, prefix), await drawIn(NARROW, planned, prefix)];
  const { stills, warnings: more } = setting.pictured ? await drawStills(planned) : { stills: undefined, warnings: [] };
  const { title, about, along, alt, csv, table } = planned;
  const method = planned.method + guardNote(csv);
  const svg = standalone(wide.svg, { title: setting.title ?? title, method }, LIGHT);
  const warnings = [...new Set([...wide.warnings, ...narrow.warnings, ...more])];
  return {
    id,
    title,
    ...(about === undefined ? {} : { about }),
    ...(along === undefined ? {} : { along }),
    alt,
    method,
    wide: wide.svg,
    narrow: narrow.svg,
    svg,
    ...(setting.png && { png: await png(svg) }),
    csv,
    table,
    ...(stills === undefined ? {} : { stills }),
    problems: warnings.map((warning) => warned(warning, setting.place)),
  };
}

function warned(warning: string, place: Place | undefined): Problem {
  const found = `the chart library warns: ${warning}`;
  if (!place) throw new Error(found);
  return error('plot-warning', place, found);
}

/** Away from its page, a picture says which run it shows. */
function aloneTitle(title: string, request: PlotRequest, subjects: readonly PlotSubject[]): string {
  const unnamed = subjects.filter(({ alias }) => alias === '').map((subject) => subject.title);
  return request.title !== undefined || unnamed.length === 0 ? title : `${title}: ${listed(unnamed)}`;
}

function undrawn(request: PlotRequest, problems: readonly Problem[]): Drawn {
  const title = request.title ?? '';
  return {
    id: request.id,
    title,
    alt: '',
    method: '',
    wide: '',
    narrow: '',
    svg: '',
    csv: '',
    table: { caption: '', head: [], rows: [] },
    problems,
  };
}
