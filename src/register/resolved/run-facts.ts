/** A run's stated quantities: as what figures need to know, and as addresses. */
import type { InstrumentFacts, RunContext } from '../../figures/context.ts';
import type { HandReading } from '../../figures/hand/hand-reading.ts';
import type { Place } from '../../problem.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { PRIMARY } from '../files/devices.ts';
import type { Condition, Device } from '../register.ts';
import { quantityOf } from '../values/quantity-value.ts';
import type { Inherited, StatedChannel, StatedCondition } from '../values/stated-value.ts';

/**
 * Conditions with their quantities. The source of a stated uncertainty names the run, also where the setup states it for several: `± 0.5 °C`
 * bounds the error of each run's ambient and does not say that the error is the same in all, so it must not cancel in their difference.
 */
export function conditionsOf(stated: ReadonlyMap<string, StatedCondition>, run: string, prefix = ''): Condition[] {
  return [...stated.values()].map(({ name, text, quantity }) => {
    if (!quantity) return { name, text };
    return { name, text, quantity: quantityOf(quantity, `run:${run}/${prefix}${name}`, `${name.replaceAll('_', ' ')} of ${run}`) };
  });
}

/** The first temperature channel: its figures stand under their bare names, and a limit without a channel is its limit. */
function primaryTemperature(channels: Iterable<StatedChannel>): string | undefined {
  return [...channels].find((channel) => channel.quantity?.value === 'temperature')?.name;
}

/** The device's limits by the run's channels: the one without a channel goes to the primary temperature, unless that has its own. */
function limitsFor(device: Device, primary: string | undefined): Record<string, Quantity> {
  const { [PRIMARY]: plain, ...named } = device.throttleAt;
  return plain && primary !== undefined ? { [primary]: plain, ...named } : named;
}

export interface Stated {
  readonly id: string;
  readonly device: Device;
  readonly specimen: string;
  readonly inherited: Inherited;
  readonly conditions: readonly Condition[];
  readonly setting: readonly Condition[];
  readonly instruments: readonly InstrumentFacts[];
  readonly readings: readonly HandReading[];
}

/** What figures need to know of a run. */
export function contextOf({ id, device, specimen, inherited, conditions, setting, instruments, readings }: Stated): RunContext {
  const ambient = named(conditions, 'ambient');
  const supply = named(conditions, 'supply');
  const at = inherited.conditions.get('supply')?.at;
  const background = named(conditions, 'background_sound');
  const microphone = conditions.find(({ name }) => name === 'microphone_distance')?.text;
  const clock = named(setting, 'clock');
  const voltageOffset = named(setting, 'voltage_offset');
  return {
    run: id,
    device: {
      id: device.id,
      ...(device.ratedClock ? { ratedClock: device.ratedClock } : {}),
      throttleAt: limitsFor(device, primaryTemperature(inherited.channels.values())),
      ...(device.power ? { power: device.power } : {}),
    },
    specimen,
    instruments: Object.fromEntries(instruments.map((facts) => [facts.id, facts])),
    ...(ambient ? { ambient } : {}),
    ...(background?.unit === 'dB' ? { background } : {}),
    ...(microphone === undefined ? {} : { microphone }),
    ...(supply ? { supply: { voltage: supply, ...(at ? { at } : {}) } } : {}),
    setting: { ...(clock ? { clock } : {}), ...(voltageOffset ? { voltageOffset } : {}) },
    phases: inherited.phases?.value ?? [],
    ...(readings.length > 0 ? { readings } : {}),
    ...(inherited.steady === undefined ? {} : { steady: inherited.steady }),
  };
}

/** Addresses besides figures, without the alias. */
export function factsOf({ device, inherited, conditions, setting }: Stated): Map<string, Quantity> {
  const facts = new Map<string, Quantity>();
  const add = (address: string, quantity: Quantity | undefined) => quantity && facts.set(address, quantity);
  for (const { name, quantity } of setting) add(`setting.${name}`, quantity);
  for (const { name, quantity } of conditions) add(name, quantity);
  add('device.rated_clock', device.ratedClock);
  add('device.supply', device.supply);
  const primary = primaryTemperature(inherited.channels.values());
  const limits = limitsFor(device, primary);
  if (primary !== undefined) add('device.throttle_at', limits[primary]);
  for (const [channel, limit] of Object.entries(limits)) add(`device.throttle_at.${channel}`, limit);
  return facts;
}

/** Where each fact is written: a rating in the device, what else there is in the run or its setup. */
export function factPlacesOf(
  facts: Iterable<string>,
  { device, inherited }: Stated,
  placeOf: (path: string) => Place,
): Map<string, Place> {
  const primary = primaryTemperature(inherited.channels.values());
  const place = (address: string): Place => {
    if (address === 'device.throttle_at') return device.placeOf(`throttle_at.${primary}`);
    if (address.startsWith('device.')) return device.placeOf(address.slice('device.'.length));
    return placeOf(address.startsWith('setting.') ? address : `conditions.${address}`);
  };
  return new Map([...facts].map((address) => [address, place(address)]));
}

function named(conditions: readonly Condition[], name: string): Quantity | undefined {
  return conditions.find((condition) => condition.name === name)?.quantity;
}
