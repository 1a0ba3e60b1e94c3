/** A percentile of a clock or a power as a measured value with its own interval. */
import type { Part, Quantity } from '../quantities/quantity.ts';
import { expandedUncertainty } from '../quantities/uncertainty.ts';
import { normalQuantile } from '../statistics/normal-quantile.ts';
import type { Reason } from './absent.ts';
import type { Measured } from './average.ts';
import { freshReadings } from './held.ts';
import { isTooFew, percentileOf } from './percentile.ts';
import type { Readings } from './readings.ts';
import { readingNoise } from './scatter.ts';
import type { Soak } from './soak.ts';
import { quantityOf, samplingPart, stepPart } from './sources.ts';

interface Asked {
  readonly readings: Readings;
  /** 0.01 for the 1st percentile. */
  readonly share: number;
  readonly unit: string;
  readonly step: number;
  readonly address: string;
  /** The noise of a reading is no more than this, where something else tells. */
  readonly noiseAtMost?: number;
  readonly errorsAt: (value: number) => { readonly parts: readonly Part[]; readonly stated: boolean };
  readonly from: Measured['from'];
  readonly of: Measured['of'];
}

export type MeasuredPercentile = Measured & { readonly interval: readonly [number, number] };

/** 95 % two-sided of a normal distribution. */
const Z95 = 1.959964;

/**
 * Absent where the readings are worth too few independent ones to tell it. The reading at a percentile p of a constant load lies z_p standard
 * deviations of the readings' noise from it: the interval reaches as far towards the median, since the noise may be all that scatters.
 */
export function measuredPercentile(soak: Soak, asked: Asked): MeasuredPercentile | Reason {
  const { share, unit, step, address, errorsAt, noiseAtMost = Number.POSITIVE_INFINITY } = asked;
  const readings = freshReadings(asked.readings, step);
  const found = percentileOf(readings, share);
  if (isTooFew(found)) {
    const readings = found.worth === 1 ? 'reading' : 'readings';
    const why = `As slowly as it changes, the load is worth ${found.worth} independent ${readings}; ${share === 0.5 ? 'the median' : `the ${ordinal(share)} percentile`} needs ${found.needed}.`;
    return { absent: 'too-short', why, of: { worth: found.worth, needed: found.needed } };
  }
  const { value, low, high } = found;
  const errors = errorsAt(value);
  const hidden = stepPart(soak.context, `${address}/step`, step);
  const rest = quantityOf(value, unit, [...errors.parts, hidden], { stated: errors.stated, step });
  const scatter = samplingPart(soak.context, address, (high - low) / (2 * Z95), null);
  const quantity: Quantity = quantityOf(value, unit, [...errors.parts, hidden, scatter], { stated: errors.stated, step });
  const beside = expandedUncertainty(rest) ?? 0;
  const lifted = normalQuantile(share) * Math.min(noiseAtMost, noiseAt(readings.y, value, share, step));
  const interval = [
    value - Math.hypot(value - low, beside) - Math.max(0, lifted),
    value + Math.hypot(high - value, beside) + Math.max(0, -lifted),
  ] as const;
  return { quantity, interval, from: asked.from, of: { ...asked.of, percentile: 100 * share } };
}

/** Readings this many steps of their sensor apart are no neighbours of one level. */
const APART = 1.5;

/**
 * Noise of the readings about a percentile. None where the next reading towards the median is farther off than that noise would be: noise leaves no
 * such hole, so that these are levels of the load itself, as a clock has them.
 */
function noiseAt(y: Float64Array, value: number, share: number, step: number): number {
  const noise = readingNoise(y, step);
  const inwards = share < 0.5 ? 1 : -1;
  const hole = y.reduce(
    (least, each) => (inwards * (each - value) > 0 ? Math.min(least, Math.abs(each - value)) : least),
    Number.POSITIVE_INFINITY,
  );
  return hole > Math.max(noise, APART * step) ? 0 : noise;
}

function ordinal(share: number): string {
  const per = Math.round(100 * share);
  return `${per}${per === 1 ? 'st' : 'th'}`;
}
