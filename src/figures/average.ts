/** Time-weighted means of a channel over a stretch of rows, with what makes them uncertain. */
import type { Channel } from '../intake/log.ts';
import type { Part, Quantity } from '../quantities/quantity.ts';
import { seriesMean } from '../statistics/series-mean.ts';
import type { Of } from './absent.ts';
import { rangeWords } from './accurate-range.ts';
import type { From } from './figure.ts';
import { counted, duration, samplingOf } from './in-words.ts';
import { type Readings, readingsOf } from './readings.ts';
import { movingMean } from './smooth.ts';
import type { Rows, Soak } from './soak.ts';
import { errorsOf, quantityOf, samplingPart, stepOf, stepPart } from './sources.ts';

/** A value with what it came from, before it is put under a name. */
export interface Measured {
  readonly quantity: Quantity;
  readonly from: From;
  readonly of: Of;
}

/**
 * What counts as scatter of a mean: all that departs from it, a drift included (`mean`: of something that should be
 * steady); or what departs from the phase's own slow course (`course`: the mean of a phase as it went).
 */
export type About = 'mean' | 'course';

/** Of a clock of which the author does not say whether it was asked for or really there. */
export const CLOCK_UNSTATED = 'not stated';

/** Squares of readings from here on overflow, so that nothing can be said of their scatter. */
const OVERFLOWS = 1e150;

/** Slower than this share of the stretch is its course. */
const COURSE = 1 / 8;

/**
 * Mean of the readings and the part that their scatter adds: autocorrelation counted in, and never below step/√12
 * (a rectangular distribution of one step's width, JCGM 100:2008, F.2.2.1). Needs two readings or more.
 */
export function scatterMean(
  soak: Soak,
  readings: Readings,
  step: number,
  address: string,
  about: About,
): { mean: number; sampling: Part } {
  const { t, y } = readings;
  const weights = readings.observed > 0 ? readings.weights : undefined;
  const whole = seriesMean(y, weights);
  const { u, dof } = about === 'mean' ? whole : seriesMean(departures(t, y), weights);
  const told = y.every((value) => Math.abs(value) < OVERFLOWS) ? u : Number.NaN;
  const floor = step / Math.sqrt(12);
  const floored = told <= floor;
  const freedom = Number.isFinite(dof) ? dof : null;
  const sampling = floored ? stepPart(soak.context, address, step) : samplingPart(soak.context, address, told, freedom);
  return { mean: whole.mean, sampling };
}

/** Readings less their moving mean over an eighth of the stretch. */
function departures(t: Float64Array, y: Float64Array): Float64Array {
  const course = movingMean(t, y, COURSE * (t[t.length - 1]! - t[0]!));
  return y.map((value, i) => value - course[i]!);
}

/** Mean of a channel over rows; null with fewer than two readings. `address` names the figure in its sampling source. */
export function meanOf(soak: Soak, channel: Channel, rows: Rows, address: string, about: About = 'course'): Measured | null {
  const readings = readingsOf(soak.log, channel.values, rows);
  if (readings.y.length < 2) return null;
  const step = stepOf(soak.context, channel);
  const { mean, sampling } = scatterMean(soak, readings, step, address, about);
  const errors = errorsOf(soak.context, channel, mean);
  return {
    quantity: quantityOf(mean, channel.unit, [...errors.parts, sampling], { stated: errors.stated, step }),
    from: fromOf(soak, [channel], readings),
    of: { ...placeOf(channel), ...gapsOf(readings), ...rangeWords(soak.context, channel, mean) },
  };
}

/** Columns with the time column first, and the lines of the readings. */
export function fromOf(soak: Soak, channels: readonly { readonly column: string }[], readings: Pick<Readings, 'lines'>): From {
  return { columns: [soak.log.time.column, ...new Set(channels.map((channel) => channel.column))], rows: readings.lines };
}

/** Channel; where it is known, place of measurement; of a clock, whether it is the requested or the delivered one. */
export function placeOf(channel: Channel): Of {
  return { channel: channel.name, ...(channel.at ? { at: channel.at } : {}), ...clockOf(channel) };
}

/** What a channel of the clock shows; nothing of other channels. */
export function clockOf({ quantity, shows }: Channel): Of {
  return quantity === 'clock' ? { clock: shows ?? CLOCK_UNSTATED } : {};
}

/** Names the gaps that a mean or an integral leaves out; nothing without gaps. */
export function gapsOf(readings: Pick<Readings, 'gaps' | 'gapTime'>): Of {
  if (readings.gaps === 0) return {};
  return { gaps: `${counted(readings.gaps, 'gap')}, ${duration(readings.gapTime)} left out` };
}

/** How often the log was written, in words. */
export function samplingWords(soak: Soak): Of {
  return { sampling: samplingOf(soak.log.time.step) };
}
