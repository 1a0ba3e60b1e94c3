/** By how much the parameters of a fit move with what is not known of the room. */
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { exponentialRise } from '../../statistics/exponential-rise.ts';
import type { RiseProfile } from '../../statistics/rise-profile.ts';
import type { Soak } from '../soak.ts';
import { ambientChannel } from './ambient.ts';
import type { Bins } from './bins.ts';

/** Of an ambient that is stated and not measured: it may have drifted over the load by its own standard uncertainty. */
export function driftOf(soak: Soak, bins: Bins, profile: RiseProfile): Moved | null {
  const stated = ambientChannel(soak) ? null : soak.context.ambient;
  const drift = stated ? standardUncertainty(stated) : null;
  if (!drift) return null;
  const last = bins.t[bins.t.length - 1]!;
  const by = movedBy(bins, profile, (i) => drift * (bins.t[i]! / last - 0.5));
  return by && { id: 'ambient', title: 'drift of the ambient during the load', by };
}

/**
 * What the lag that was taken off may still be off by, as a share and a standard uncertainty: a device of several masses is reached later than
 * by its main time constant or sooner, and where it leaks it answers to its room by more than the room's drift. Common practice, no source; proved
 * on simulated devices.
 */
const LAG_SHARE = 0.3;

/** The same of the lag behind a measured ambient that was taken off: `felt` less `read`. */
export function lagOf(felt: Bins, read: Bins, profile: RiseProfile): Moved | null {
  const by = movedBy(felt, profile, (i) => LAG_SHARE * (felt.y[i]! - read.y[i]!));
  return by && { id: 'lag', title: 'lag behind a room that drifts', by };
}

/** By how much each parameter moves with something that is not known of the readings. */
export interface Moved {
  readonly id: string;
  readonly title: string;
  readonly by: readonly number[];
}

/** The best fit's parameters, had the bins lain higher by so much, less the fit as it is; null where the readings leave the end open. */
function movedBy({ t, y }: Bins, { best, open }: RiseProfile, by: (bin: number) => number): number[] | null {
  if (open) return null;
  const starts = best.terms.map(({ timeConstant }) => timeConstant);
  const still = exponentialRise(t, y, starts);
  const drifted = exponentialRise(
    t,
    y.map((value, i) => value + by(i)),
    starts,
  );
  if (!still || !drifted) return null;
  const parametersOf = ({ asymptote, amplitudes, timeConstants }: typeof still) => [asymptote, ...amplitudes, ...timeConstants];
  const before = parametersOf(still);
  return parametersOf(drifted).map((value, k) => value - before[k]!);
}
