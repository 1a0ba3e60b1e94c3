/** Words and units that plots share. */
import type { QuantityKind } from '../../intake/log.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { unitFor } from '../../quantities/units.ts';

const TITLES: Readonly<Record<QuantityKind, string>> = {
  temperature: 'Temperature',
  ambient: 'Ambient temperature',
  clock: 'Clock',
  current: 'Current',
  voltage: 'Voltage',
  power: 'Power',
  energy: 'Energy',
  throttle_flag: 'Throttle flag (1 = now)',
  fan: 'Fan',
  sound_level: 'Sound level',
  utilisation: 'Utilisation',
  charge_level: 'Charge level',
  other: 'Reading',
};

/** A quantity's name at the head of an axis. */
export function titleOf(kind: QuantityKind): string {
  return TITLES[kind];
}

/** The same within a sentence. */
export function namedTitle(kind: QuantityKind): string {
  const title = kind === 'throttle_flag' ? 'Throttle flag' : TITLES[kind];
  return title.slice(0, 1).toLowerCase() + title.slice(1);
}

/** "Temperature of chip", "Input current": a quantity's name at the head of an axis, with the channel that is drawn where that says more. */
export function titleOfChannel(title: string, channel: string | undefined): string {
  const own = title.toLowerCase();
  if (channel === undefined || channel.toLowerCase() === own) return title;
  return channel.toLowerCase().endsWith(` ${own}`)
    ? `${channel.slice(0, 1).toUpperCase()}${channel.slice(1)}`
    : `${title} of ${channel}`;
}

/** A unit for people, and what a value in the canonical unit is divided by to be in it, its zero taken off before. */
export interface DisplayUnit {
  readonly unit: string;
  readonly divisor: number;
  /** Of a temperature scale, in the canonical unit; 0 when left out. */
  readonly zero?: number;
}

/** A canonical value in a unit for people. */
export function inDisplay(value: number, { divisor, zero = 0 }: DisplayUnit): number {
  return (value - zero) / divisor;
}

/** Units that take a prefix of the SI. */
const PREFIXED = new Set(['Hz', 'A', 'V', 'W', 'J']);
const PREFIXES = [
  ['G', 1e9],
  ['M', 1e6],
  ['k', 1e3],
  ['', 1],
  ['m', 1e-3],
  ['µ', 1e-6],
] as const;

/**
 * The first of the units wished for that fits; else the one in which the largest magnitude has one to three digits before its point; a
 * utilisation and charge level are in per cent.
 */
export function displayUnit(kind: QuantityKind, unit: string, largest: number, wished: readonly string[] = []): DisplayUnit {
  const [asked] = wished.flatMap((spelling) => askedUnit(unit, spelling));
  if (asked) return asked;
  if ((kind === 'utilisation' || kind === 'charge_level') && unit === '1') return { unit: '%', divisor: 0.01 };
  if (!PREFIXED.has(unit)) return { unit, divisor: 1 };
  const [prefix, divisor] = PREFIXES.find(([, factor]) => Math.abs(largest) >= factor) ?? ['', 1];
  return { unit: `${prefix}${unit}`, divisor };
}

function askedUnit(canonical: string, spelling: string): DisplayUnit[] {
  const unit = unitFor(canonical, spelling);
  return isRefusal(unit) ? [] : [{ unit: spelling, divisor: unit.factor, zero: unit.offset }];
}

/** "Temperature (°C)"; a count, whose unit is 1, has none. */
export function withUnit(title: string, unit: string): string {
  return unit === '1' || unit === '' ? title : `${title} (${unit})`;
}

/** "71.5 °C": a reading as it was logged, to the decimals of its channel's step. */
export function reading(value: number, decimals: number, unit: string): string {
  const number = fixed(value, decimals);
  return unit === '1' || unit === '' ? number : `${number} ${unit}`;
}

/** A number to so many decimals, with a minus sign instead of a hyphen and never a negative zero. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** Decimals that show a step: 0.1 → 1, 0.25 → 2, 5 → 0; at most six. */
export function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 6; decimals += 1) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6 * scaled) return decimals;
  }
  return 6;
}
