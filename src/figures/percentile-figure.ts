/** A percentile of a clock or a power as a measured value with its own interval. */
import type { Part, Quantity } from '../quantities/quantity.ts';
import { expandedUncertainty } from '../quantities/uncertainty.ts';
import type { Reason } from './absent.ts';
import type { Measured } from './average.ts';
import { isTooFew, percentileOf } from './percentile.ts';
import type { Readings } from './readings.ts';
import type { Soak } from './soak.ts';
import { quantityOf, samplingPart, stepPart } from './sources.ts';

interface Asked {
  readonly readings: Readings;
  /** 0.01 for the 1st percentile. */
  readonly share: number;
  readonly unit: string;
  readonly step: number;
  readonly address: string;
  readonly errorsAt: (value: number) => { readonly parts: readonly Part[]; readonly stated: boolean };
  readonly from: Measured['from'];
  readonly of: Measured['of'];
}

export type MeasuredPercentile = Measured & { readonly interval: readonly [number, number] };

/** 95 % two-sided of a normal distribution. */
const Z95 = 1.959964;

/** Absent where the readings are worth too few independent ones to tell it. */
export function measuredPercentile(soak: Soak, asked: Asked): MeasuredPercentile | Reason {
  const { readings, share, unit, step, address, errorsAt } = asked;
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
  const interval = [value - Math.hypot(value - low, beside), value + Math.hypot(high - value, beside)] as const;
  return { quantity, interval, from: asked.from, of: { ...asked.of, percentile: 100 * share } };
}

function ordinal(share: number): string {
  const per = Math.round(100 * share);
  return `${per}${per === 1 ? 'st' : 'th'}`;
}
