/** One temperature channel over a phase, prepared once for all figures that look at its course. */
import type { Channel } from '../../intake/log.ts';
import { noPhase, noReadings, type Reason } from '../absent.ts';
import type { Phase } from '../figure.ts';
import { stepIn } from '../origin.ts';
import { oneAnInstant, type Readings, readingsOf } from '../readings.ts';
import { phaseOf, rowsOf, type Soak } from '../soak.ts';
import { riseValues } from './ambient.ts';

export interface LoadSeries {
  readonly channel: Channel;
  readonly phase: Phase;
  /** Rise over ambient where that is measured, else the temperature itself, one an instant; times since the log's first row. */
  readonly readings: Readings;
  /** Seconds since the phase began. */
  readonly t: Float64Array;
  /** Seconds from the beginning of the phase to its last reading. */
  readonly lasted: number;
  /** Seconds that the phase lasted: longer where its last readings are missing. */
  readonly length: number;
  /** Median step of the log, s. */
  readonly step: number;
}

/** What is looked at of a course, whatever it is a course of. */
export type Sampled = Pick<LoadSeries, 't' | 'lasted' | 'length' | 'step'> & { readonly readings: Pick<Readings, 'y'> };

/** Of the load, or of another phase. */
export function loadSeries(soak: Soak, channel: Channel, name = 'load'): LoadSeries | Reason {
  const phase = phaseOf(soak, name);
  if (!phase) return noPhase(soak, name);
  return seriesOf(soak, channel, riseValues(soak, channel), phase) ?? noReadings(channel.name, `the ${name} phase`);
}

/** Of values of a channel, one a row, over a phase; null where fewer than two of them are readings. */
export function seriesOf(soak: Soak, channel: Channel, values: Float64Array, phase: Phase): LoadSeries | null {
  const readings = oneAnInstant(readingsOf(soak.log, values, rowsOf(phase)));
  if (readings.y.length < 2) return null;
  const t = readings.t.map((time) => time - phase.from);
  return {
    channel,
    phase,
    readings,
    t,
    lasted: t[t.length - 1]!,
    length: phase.to - phase.from,
    step: stepIn(soak.log, channel.log) ?? 0,
  };
}
