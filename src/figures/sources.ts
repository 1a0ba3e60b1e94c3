/** Uncertainty sources of readings: an instrument's gain and offset, its resolution, the scatter of the readings. */
import { canonicalUnits } from '../intake/columns/column-units.ts';
import type { Channel, QuantityKind } from '../intake/log.ts';
import { standardOf } from '../quantities/accuracy.ts';
import { distributionOf } from '../quantities/coverage.ts';
import type { Part, Quantity, Source } from '../quantities/quantity.ts';
import { interval95 } from '../quantities/uncertainty.ts';
import type { Correction, InstrumentFacts, RunContext } from './context.ts';

/** What is known of the errors of a channel at one reading. */
export interface Errors {
  readonly parts: readonly Part[];
  /** False where a sensor states no accuracy: parts then hold nothing of its gain and offset. */
  readonly stated: boolean;
}

/** A device reports its own clock from a crystal: its error of some millionths is left out, so no accuracy is asked for. */
const EXACT_BY_NATURE: readonly QuantityKind[] = ['clock', 'throttle_flag'];

/** What reads a quantity: a channel of a log, or an instrument whose readings stand in a table. */
export type Sensor = Pick<Channel, 'quantity' | 'instrument' | 'step'>;

export function instrumentOf(context: RunContext, channel: Sensor): InstrumentFacts | null {
  return (channel.instrument && context.instruments[channel.instrument]) || null;
}

/** An ambient is a temperature: what one thermometer reads of both shares its errors. */
export function kindOf({ quantity }: Sensor): QuantityKind {
  return quantity === 'ambient' ? 'temperature' : quantity;
}

/** The step that a channel's readings come in, in its unit: the instrument's resolution, else the step seen in the log, else 0. */
export function stepOf(context: RunContext, channel: Sensor): number {
  const resolution = instrumentOf(context, channel)?.resolution;
  return (resolution?.[channel.quantity] ?? resolution?.[kindOf(channel)])?.value ?? channel.step ?? 0;
}

/** What is added to the readings of a sensor, as its instrument states it; null where nothing is. */
export function correctionOf(context: RunContext, channel: Sensor): Correction | null {
  const correction = instrumentOf(context, channel)?.correction;
  return correction?.[channel.quantity] ?? correction?.[kindOf(channel)] ?? null;
}

/**
 * Gain, offset and correction of a channel's instrument at a (corrected) reading, in the channel's unit (K where that is °C).
 * Shared by everything that the instrument read; where the sensor is part of the specimen, by that specimen's readings alone.
 * Limits become standard uncertainties as JCGM 100:2008, 4.3.7, has it; an applied correction leaves its own (3.2.4, 6.3.1 there).
 * A correction alone is no accuracy: what the sensor drifted since it was found stays unstated.
 */
export function errorsOf(context: RunContext, channel: Sensor, reading: number): Errors {
  const instrument = instrumentOf(context, channel);
  const accuracy = instrument?.accuracy[channel.quantity] ?? instrument?.accuracy[kindOf(channel)];
  if (!instrument) return { parts: [], stated: EXACT_BY_NATURE.includes(channel.quantity) };
  const piece = instrument.partOfSpecimen ? `@${context.device.id}/${context.specimen}` : '';
  const root = `instrument:${instrument.id}${piece}/${kindOf(channel)}`;
  const unit = ownUnit(canonicalUnits(kindOf(channel))[0] ?? '1');
  const part = (
    kind: string,
    share: number,
    own: Required<Source>['standard'],
    distribution: Pick<Source, 'distribution'>,
  ): Part => ({
    source: {
      id: `${root}/${kind}`,
      title: `${kind === 'correction' ? kind : `${kind} error`} of ${instrument.title} (${kindOf(channel)})`,
      dof: null,
      ...distribution,
      standard: own,
    },
    share,
  });
  const correction = correctionOf(context, channel);
  const corrected =
    correction && correction.u !== 0 ? [part('correction', correction.u, { u: correction.u, unit }, limitsOf(correction))] : [];
  if (!accuracy) return { parts: corrected, stated: EXACT_BY_NATURE.includes(channel.quantity) };
  const { gain, offset } = standardOf(accuracy, reading, stepOf(context, channel));
  const signed = reading < 0 ? -Math.abs(gain) : Math.abs(gain);
  const distribution = distributionOf(accuracy.coverage);
  const parts = [
    part('gain', signed, { u: Math.abs(gain / reading), unit: '1' }, distribution),
    part('offset', offset, { u: offset, unit }, distribution),
  ].filter((each) => each.share !== 0);
  return { parts: [...corrected, ...parts], stated: true };
}

/** What a source says of its distribution that something stated with `distribution` gives rise to. */
export function limitsOf(stated: { readonly distribution?: 'rectangular' } | null): Pick<Source, 'distribution'> {
  return stated?.distribution ? { distribution: stated.distribution } : {};
}

/** The scatter behind one figure of one run: shared by nobody but what is computed from it. */
export function samplingPart(context: RunContext, address: string, share: number, dof: number | null): Part {
  return {
    source: { id: `run:${context.run}/${address}/sampling`, title: `scatter and sampling of ${address} in ${context.run}`, dof },
    share,
  };
}

/** What one step hides of a figure, in its stead: an error anywhere within half a step (JCGM 100:2008, F.2.2.1), seen through `factor`. */
export function stepPart(context: RunContext, address: string, step: number, factor = 1): Part {
  const { source, share } = samplingPart(context, address, (factor * step) / Math.sqrt(12), null);
  return { source: { ...source, distribution: 'rectangular' }, share };
}

/** Differences of temperatures are in K. */
function ownUnit(unit: string): string {
  return unit === '°C' ? 'K' : unit;
}

/**
 * Puts a quantity together: parts sorted by source, shares of one source added, zero shares dropped. A source that does not say its own
 * standard uncertainty was found in this quantity, with a sensitivity of 1.
 */
export function quantityOf(value: number, unit: string, parts: readonly Part[], more: { stated: boolean; step: number }): Quantity {
  const bySource = new Map<string, Part>();
  for (const part of parts) {
    const known = bySource.get(part.source.id);
    bySource.set(part.source.id, known ? { source: part.source, share: known.share + part.share } : part);
  }
  const sorted = [...bySource.values()]
    .filter((part) => part.share !== 0)
    .map((part) => (part.source.standard ? part : foundHere(part, unit)))
    .sort((a, b) => (a.source.id < b.source.id ? -1 : 1));
  return {
    value,
    unit,
    parts: sorted,
    ...(more.stated ? {} : { repeatabilityOnly: true }),
    ...(more.step > 0 ? { step: more.step } : {}),
  };
}

/** A quantity with further sources of uncertainty. */
export function withParts(quantity: Quantity, more: readonly Part[]): Quantity {
  if (quantity.parts === null || more.length === 0) return quantity;
  const { parts } = quantityOf(quantity.value, quantity.unit, [...quantity.parts, ...more], { stated: true, step: 0 });
  return { ...quantity, parts };
}

function foundHere({ source, share }: Part, unit: string): Part {
  return { source: { ...source, standard: { u: Math.abs(share), unit: ownUnit(unit) } }, share };
}

/** The same errors seen through a factor: W per A, s per W … */
export function scaled(parts: readonly Part[], factor: number): Part[] {
  return parts.map((part) => ({ source: part.source, share: part.share * factor }));
}

/** Tells whether variances of the shares stay within what a double can hold. */
export function isTellable(quantity: Quantity): boolean {
  const variance = (quantity.parts ?? []).reduce((sum, part) => sum + part.share * part.share, 0);
  return Number.isFinite(quantity.value) && Number.isFinite(variance);
}

/** The 95 % interval; null where the uncertainty is unknown, or overflows and so cannot be told. */
export function intervalOf(quantity: Quantity): readonly [number, number] | null {
  return isTellable(quantity) ? interval95(quantity) : null;
}
