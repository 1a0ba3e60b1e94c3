/** Temperatures as rise over the run's ambient, as the thermal figures take it. */
import { ambientChannel, riseValues } from '../figures/thermal/ambient.ts';
import type { Channel } from '../intake/log.ts';
import type { PlotSubject } from './drawn.ts';

/**
 * Rise over ambient of each row, K: over the ambient measured at that time, else over the stated one; null where there is
 * neither.
 */
export function riseOver(subject: PlotSubject, channel: Channel): Float64Array | null {
  const soak = { log: subject.log, context: subject.context, phases: subject.derived.phases, inferred: [] };
  const measured = ambientChannel(soak);
  if (measured && measured.missing < subject.log.rows) return riseValues(soak, channel);
  const stated = subject.context.ambient?.value;
  return stated === undefined ? null : channel.values.map((value) => value - stated);
}
