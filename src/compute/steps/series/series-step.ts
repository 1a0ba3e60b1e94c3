/** A run's stored Log → what comparisons need of it: its series as drawn, and the ambient of its load. */
import { isReason } from '../../../figures/absent.ts';
import type { Figure } from '../../../figures/figure.ts';
import { phaseOf, rowsOf, type Soak } from '../../../figures/soak.ts';
import { ambientOver } from '../../../figures/thermal/ambient.ts';
import { soakOf } from '../../../plots/data/measured-run.ts';
import { runSeries } from '../../../plots/data/run-series.ts';
import type { RunSeries } from '../../../plots/data/series.ts';
import type { PlotSubject } from '../../../plots/drawing/drawn.ts';
import type { Problem } from '../../../problem.ts';
import { digestOf } from '../../store/digest.ts';
import { seriesText } from '../../store/json-text.ts';
import type { Store } from '../../store/store.ts';
import { plotSubject } from '../plots/plot-subject.ts';
import type { RunTask } from '../runs/run-step.ts';

export interface SeriesTask {
  readonly step: 'series';
  readonly key: string;
  readonly run: RunTask;
}

export interface SeriesResult {
  /** Blob of `runs/<id>/series.json`: most builds only copy it. */
  readonly text: string;
  /** Mean over the load, or over the whole log where there is none; null where no ambient is measured or stated. */
  readonly ambient: Figure | null;
  readonly problems: readonly Problem[];
}

/** A task with the key that covers it: its code, and the run. */
export function seriesTask(code: string, run: RunTask): SeriesTask {
  return { step: 'series', key: digestOf(['series', code, run.key]), run };
}

export function seriesStep(root: string, store: Store, { run }: SeriesTask): SeriesResult {
  const subject = plotSubject(root, store, '', { title: '', run });
  return { text: store.keep(seriesText(runSeries(subject))), ambient: ambientOf(subject), problems: [] };
}

/** The series themselves, where a comparison needs them. */
export function storedSeries(store: Store, { text }: SeriesResult): RunSeries {
  return JSON.parse(Buffer.from(store.bytes(text)).toString('utf8')) as RunSeries;
}

function ambientOf(subject: PlotSubject): Figure | null {
  const soak: Soak = soakOf(subject);
  const load = phaseOf(soak, 'load');
  const rows = load && load.toRow > load.fromRow ? rowsOf(load) : { from: 0, to: soak.log.rows };
  const ambient = ambientOver(soak, rows, 'ambient.load');
  if (isReason(ambient)) return null;
  const { quantity, from, of } = ambient;
  return { name: 'ambient', quantity, from: from ?? { columns: [], rows: null }, of };
}
