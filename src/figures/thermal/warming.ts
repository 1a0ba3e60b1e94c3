/** How a run's temperature climbs under load, as fitted: what leaks more when it is warmer follows it. */
import { isReason } from '../absent.ts';
import type { Meter } from '../power/meters.ts';
import { channelsOf, type Soak } from '../soak.ts';
import { beginningOf } from './beginning.ts';
import { loadSeries } from './load-series.ts';
import { isResponse, responseOf } from './response.ts';

/**
 * What is left to climb, K, by the seconds since the log's first row: of the first temperature channel under load. Null without one, or where
 * nothing can be fitted to it. The load is taken as constant: whether it was is for the caller to tell.
 */
export function warmingOf(soak: Soak, meter: Meter | null): Soak['warming'] {
  const channel = channelsOf(soak.log, 'temperature')[0];
  const series = channel && loadSeries(soak, channel);
  if (!series || isReason(series)) return null;
  const response = responseOf(soak, series, 0, beginningOf(soak, meter));
  if (!isResponse(response)) return null;
  const { terms } = response;
  const { from } = series.phase;
  return (t) => terms.reduce((sum, { amplitude, timeConstant }) => sum + amplitude * Math.exp((from - t) / timeConstant), 0);
}
