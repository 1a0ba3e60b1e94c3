/** How far a device lags behind a room that drifts while it is measured. */
import type { Part } from '../../quantities/quantity.ts';
import type { RiseTerm } from '../../statistics/rise-profile.ts';
import { trend } from '../../statistics/trend.ts';
import { readingsOf } from '../readings.ts';
import type { Rows, Soak } from '../soak.ts';
import { ambientChannel } from './ambient.ts';
import { isResponse } from './response.ts';
import type { Course } from './thermal.ts';

/** Fewer readings tell no drift. */
const FEWEST = 4;

/**
 * K, as a standard uncertainty: drift of the measured ambient over the rows times the mean delay of the fitted response. A room that warms
 * makes the rise too small by about that much, and one whose drift is no straight line by less or more: so it is no correction. None where
 * the ambient is not measured (its own uncertainty then covers it), or nothing was fitted.
 */
export function lagPart({ soak, channel, response }: Pick<Course, 'soak' | 'channel' | 'response'>, rows: Rows): Part[] {
  const ambient = ambientChannel(soak);
  if (!ambient || !isResponse(response)) return [];
  const share = -driftOver(soak, ambient.values, rows) * delayOf(response.terms);
  if (share === 0) return [];
  const title = `lag of ${channel.name} behind a room that drifts, in ${soak.context.run}`;
  return [{ source: { id: `run:${soak.context.run}/lag.${channel.name}`, title, dof: null }, share }];
}

/** K/s. */
function driftOver(soak: Soak, values: Float64Array, rows: Rows): number {
  const { t, y } = readingsOf(soak.log, values, rows);
  return y.length < FEWEST ? 0 : trend(t, y).slope;
}

/** s: time constants weighted by their amplitudes. */
function delayOf(terms: readonly RiseTerm[]): number {
  const height = terms.reduce((sum, { amplitude }) => sum + Math.abs(amplitude), 0);
  return terms.reduce((sum, { amplitude, timeConstant }) => sum + (Math.abs(amplitude) * timeConstant) / height, 0);
}
