/** Lays what a run states over what its setup states. */
import { mergeChannels } from '../sections/channels.ts';
import type { Inherited, Shared } from '../values/stated-value.ts';

/**
 * Conditions and settings are merged by key, channels by name and then by key; what is known of either counts. The list of instruments and
 * the phases are replaced whole where the run states them: half of either would be a guess. Everything else: the run's, if it states it.
 */
export function inherit(setup: Shared | undefined, run: Shared): Inherited {
  if (!setup) return run;
  return {
    ...setup,
    ...run,
    conditions: new Map([...setup.conditions, ...run.conditions]),
    setting: new Map([...setup.setting, ...run.setting]),
    channels: mergeChannels(setup.channels, run),
    known: [...run.known, ...setup.known],
  };
}
