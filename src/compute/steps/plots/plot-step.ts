/** A request and the Logs it names → a drawn plot, its downloads in the store. */
import { draw } from '../../../plots/draw.ts';
import type { Drawn } from '../../../plots/drawing/drawn.ts';
import type { Store } from '../../store/store.ts';
import { plotSubject } from './plot-subject.ts';
import type { PlotResult, PlotTask } from './plot-task.ts';

/** Draws one plot. */
export async function plotStep(root: string, store: Store, task: PlotTask): Promise<PlotResult> {
  const subjects = task.subjects.map((subject, index) => plotSubject(root, store, task.request.runs[index]!.alias, subject));
  return storePlot(store, await draw(task.request, subjects, task.request.id, task.attempts, task.compared, task.pictures));
}

/** A Drawn with its drawings and downloads put into the store. */
export function storePlot(store: Store, { wide, narrow, svg, png, csv, stills = [], ...drawn }: Drawn): PlotResult {
  return {
    ...drawn,
    inline: { wide: store.keep(wide), narrow: store.keep(narrow) },
    files: {
      svg: store.keep(svg),
      ...(png !== undefined && { png: store.keep(Buffer.from(png, 'base64')) }),
      csv: store.keep(csv),
    },
    stills: stills.map((still) => ({ ...still, svg: store.keep(still.svg) })),
  };
}
