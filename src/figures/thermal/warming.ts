/** How a run's temperature climbs under load, as fitted: what leaks more when it is warmer follows it. */
import { isReason } from '../absent.ts';
import type { Soak } from '../soak.ts';
import type { LoadFit } from './load-fits.ts';
import { isResponse } from './response.ts';

/**
 * What is left to climb, K, by the seconds since the log's first row: of the first temperature channel under load. Null without one, or where
 * nothing can be fitted to it. The load is taken as constant: whether it was is for the caller to tell.
 */
export function warmingOf(first: LoadFit | undefined): Soak['warming'] {
  if (!first || isReason(first.series)) return null;
  const response = first.response();
  if (!isResponse(response)) return null;
  const { terms } = response;
  const { from } = first.series.phase;
  return (t) => terms.reduce((sum, { amplitude, timeConstant }) => sum + amplitude * Math.exp((from - t) / timeConstant), 0);
}
