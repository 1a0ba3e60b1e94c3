/** The quickest time constant of a run's temperature: what is loaded warms by it, and its power follows. */
import { isReason } from '../absent.ts';
import { channelsOf, type Soak } from '../soak.ts';
import { loadSeries } from './load-series.ts';
import { isResponse, responseOf } from './response.ts';

/** s, of the first temperature channel under load; null without one, or where nothing can be fitted to it. The load is taken as constant. */
export function fastConstant(soak: Soak): number | null {
  const channel = channelsOf(soak.log, 'temperature')[0];
  const series = channel && loadSeries(soak, channel);
  if (!series || isReason(series)) return null;
  const response = responseOf(soak, series, 0);
  return isResponse(response) ? Math.min(...response.terms.map(({ timeConstant }) => timeConstant)) : null;
}
