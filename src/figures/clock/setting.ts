/** The clock against the clock that was set. */
import type { Channel } from '../../intake/log.ts';
import type { Reason } from '../absent.ts';
import { latestBeside } from '../origin.ts';
import { channelsOf, type Soak } from '../soak.ts';
import { stepOf } from '../sources.ts';

export interface Threshold {
  /** Hz: below this a reading counts as below the setting. */
  readonly below: number;
  readonly tolerance: number;
}

/** A reading is below the setting by more than one step of the clock, and by more than this share of the setting. */
const LEAST_SHARE = 0.01;

/** Share by which a clock may exceed its rating before that counts: readings scatter. */
export const CLOCK_TOLERANCE = 0.005;

/** Setting less tolerance, Hz; absent where no clock is set. */
export function thresholdOf(soak: Soak, clock: Channel): Threshold | Reason {
  const setting = soak.context.setting.clock;
  if (!setting) return { absent: 'no-condition', why: 'The run states no clock setting.' };
  if (setting.unit !== clock.unit) {
    return {
      absent: 'no-condition',
      why: `The clock setting is stated in ${setting.unit}, the readings of ${clock.name} are in ${clock.unit}.`,
    };
  }
  const tolerance = Math.max(stepOf(soak.context, clock), LEAST_SHARE * setting.value);
  return { below: setting.value - tolerance, tolerance };
}

/** From this utilisation on, a row counts as loaded. */
const LOADED = 0.5;

/** Tells whether a row of the clock counts as loaded: always, or, where utilisation is logged, at half of it or more. */
export function loadedAt(soak: Soak, clock: Channel): (row: number) => boolean {
  const utilisation = channelsOf(soak.log, 'utilisation')[0];
  if (!utilisation) return () => true;
  const least = utilisation.unit === '%' ? 100 * LOADED : LOADED;
  const values = latestBeside(soak.log, utilisation, clock);
  return (row) => !(values[row]! < least);
}
