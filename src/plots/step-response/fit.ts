/** The step response that the figures fitted to a run's load, ready to be drawn; or why there is none. */
import { isReason } from '../../figures/absent.ts';
import { type Figure, isPresent } from '../../figures/figure.ts';
import { metersOf } from '../../figures/power/meters.ts';
import { channelsOf } from '../../figures/soak.ts';
import { beginningOf } from '../../figures/thermal/beginning.ts';
import { type LoadSeries, loadSeries } from '../../figures/thermal/load-series.ts';
import { isResponse, type Response, responseOf } from '../../figures/thermal/response.ts';
import type { Channel } from '../../intake/log.ts';
import { figureOf } from '../data/figure-text.ts';
import { soakOf } from '../data/measured-run.ts';
import type { PlotSubject } from '../drawing/drawn.ts';

export interface Fit {
  /** The figures that say the same: time constant and asymptote. */
  readonly timeConstant: Figure;
  readonly asymptote: Figure | undefined;
  /** What was fitted. */
  readonly series: LoadSeries;
  /** The fitted value at a time in s since the load began, in the terms of the figures' rise. */
  readonly at: (seconds: number) => number;
}

/** Course of a channel under load, or why it cannot be had. */
export function courseOf(subject: PlotSubject, channel: Channel): LoadSeries | { readonly why: string } {
  const series = loadSeries(soakOf(subject), channel);
  return isReason(series) ? { why: series.why } : series;
}

/** The fit behind the figure `time_constant`, by the figures' own function; where that figure is absent, its reason. */
export function fitOf(subject: PlotSubject, channel: Channel, series: LoadSeries): Fit | { readonly why: string } {
  const timeConstant = figureOf(subject, 'time_constant', channel.name);
  if (!timeConstant) return { why: 'The run has no time constant.' };
  if (!isPresent(timeConstant)) return { why: timeConstant.why };
  const soak = soakOf(subject);
  const seen = beginningOf(soak, metersOf(soak).meters[0] ?? null);
  const response = responseOf(soak, series, channelsOf(soak.log, 'temperature').indexOf(channel), seen);
  if (!isResponse(response)) return { why: response.why };
  const asymptote = figureOf(subject, 'asymptote_temperature', channel.name);
  return { timeConstant, asymptote, series: response.series, at: curveOf(response) };
}

function curveOf({ asymptote, terms }: Response): (seconds: number) => number {
  return (seconds) =>
    terms.reduce((sum, { amplitude, timeConstant }) => sum - amplitude * Math.exp(-seconds / timeConstant), asymptote);
}
