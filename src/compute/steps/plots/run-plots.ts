/** The plots that every run's page has of its own: the trace of what was measured, and the step response where it could be fitted. */
import { isPresent, type RunFigures } from '../../../figures/figure.ts';
import type { QuantityKind } from '../../../intake/log.ts';
import type { Run } from '../../../register/register.ts';
import type { PlotRequest } from '../../../register/requests.ts';

/** Quantities of the trace, from top to bottom; the first of the last two that was logged. */
const PANELS: readonly (readonly QuantityKind[])[] = [['temperature'], ['clock'], ['power', 'current']];

/** Without an alias: the page's title says which run it is, and lines are labelled with their channels. */
export function runPlots(run: Run, derived: RunFigures): PlotRequest[] {
  const channels = PANELS.flatMap((kinds) => primaryChannel(run, kinds));
  const image: PlotRequest[] = run.surfaceImage === undefined ? [] : [thermalPlot(run)];
  if (channels.length === 0) return image;
  const common = { runs: [{ alias: '', run: run.id, slot: 0 }], rise: false, place: run.placeOf('log') };
  const trace: PlotRequest = { ...common, kind: 'trace', id: 'trace', channels };
  const response = derived.figures.get('time_constant');
  if (response === undefined || !isPresent(response)) return [trace, ...image];
  return [trace, { ...common, kind: 'step-response', id: 'step-response', channels: [] }, ...image];
}

function thermalPlot(run: Run): PlotRequest {
  const runs = [{ alias: '', run: run.id, slot: 0 }];
  return { kind: 'thermal', id: 'thermal', runs, channels: [], rise: false, place: run.placeOf('surface') };
}

function primaryChannel(run: Run, kinds: readonly QuantityKind[]): string[] {
  for (const kind of kinds) {
    const channel = run.channels.find(({ quantity }) => quantity === kind);
    if (channel !== undefined) return [channel.name];
  }
  return [];
}
