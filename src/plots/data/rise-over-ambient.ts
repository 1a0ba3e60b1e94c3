/** Temperatures as rise over the run's ambient, as the thermal figures take it. */
import { ambientChannel, riseValues } from '../../figures/thermal/ambient.ts';
import type { Channel } from '../../intake/log.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import { soakOf } from './measured-run.ts';

/**
 * Rise over ambient of each row, K: over the ambient measured at that time, else over the stated one; null where there is
 * neither.
 */
export function riseOver(subject: PlotSubject, channel: Channel): Float64Array | null {
  const base = statedBase(subject);
  if (base === null) return null;
  const values = riseValues(soakOf(subject), channel);
  return base === 0 ? values : values.map((value) => value - base);
}

/**
 * What remains to be taken off the figures' rise: nothing where the ambient is measured, the stated ambient where it is
 * not; null without either.
 */
export function statedBase(subject: PlotSubject): number | null {
  const measured = ambientChannel(soakOf(subject));
  if (measured && !measured.values.every(Number.isNaN)) return 0;
  return subject.context.ambient?.value ?? null;
}
