/** Course and step response of each temperature channel under load: prepared once for all that look at them. */
import { isReason, type Reason } from '../absent.ts';
import type { Meter } from '../power/meters.ts';
import { channelsOf, type Soak } from '../soak.ts';
import { beginningOf } from './beginning.ts';
import { type LoadSeries, loadSeries } from './load-series.ts';
import { type Response, responseOf } from './response.ts';

export interface LoadFit {
  readonly series: LoadSeries | Reason;
  /** Fitted when it is first asked for, as if the load had been constant: whether it was is for the caller to tell. */
  readonly response: () => Response | Reason;
}

/** In the order of the temperature channels. `meter`: the primary power, or null without one. */
export function loadFits(soak: Soak, meter: Meter | null): readonly LoadFit[] {
  const began = once(() => beginningOf(soak, meter));
  return channelsOf(soak.log, 'temperature').map((channel, index) => {
    const series = loadSeries(soak, channel);
    return { series, response: once(() => (isReason(series) ? series : responseOf(soak, series, index, began()))) };
  });
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
