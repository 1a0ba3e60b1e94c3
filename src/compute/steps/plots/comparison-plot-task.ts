/** What a worker is asked to draw of a gathered comparison, and the key that covers it. */
import type { Problem } from '../../../problem.ts';
import type { Gathered } from '../../models/gathered.ts';
import { digestOf } from '../../store/digest.ts';
import type { PlotResult } from './plot-task.ts';

/** The plots of a comparison's page, in its order. */
export const COMPARED_PLOTS = ['temperature', 'rise', 'clock', 'power', 'scaling', 'deltas', 'scores'] as const;
export type ComparedPlotId = (typeof COMPARED_PLOTS)[number];

export interface ComparedPlotTask {
  readonly step: 'compared-plot';
  readonly key: string;
  readonly id: ComparedPlotId;
  readonly gathered: Gathered;
  /** Whether its page is shown by it where somebody links there. */
  readonly pictured: boolean;
}

export interface ComparedPlotResult {
  /** Null where there is nothing to draw of the kind. */
  readonly plot: PlotResult | null;
  /** Then why, in a sentence for readers; '' else. */
  readonly why: string;
  readonly problems: readonly Problem[];
}

/** A task with the key that covers it: its code, the plot, and all that was gathered (by its digest). */
export function comparedPlotTask(
  code: string,
  id: ComparedPlotId,
  gathered: Gathered,
  digest: string,
  pictured: boolean,
): ComparedPlotTask {
  return { step: 'compared-plot', key: digestOf(['compared-plot', code, id, digest, pictured]), id, gathered, pictured };
}
