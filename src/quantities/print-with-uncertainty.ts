/** Value and 95 % interval in one short text, for tables whose caption says the level. */
import { printQuantity } from './print.ts';
import { type IntervalOptions, statedInterval } from './print-uncertainty.ts';
import type { Quantity } from './quantity.ts';

const NO_BREAK = '\u00a0';

export interface WithUncertaintyOptions extends IntervalOptions {
  /** Differences: a plus sign before what is above zero as printed. */
  readonly signed?: boolean;
}

/**
 * "27.5 ± 0.5 °C", "66.5 °C (64.5 to 68.0)" with an interval of its own, "27.7 min ± 90 s" where the uncertainty has a unit of its own, the value
 * alone for an exact quantity; ", uncertainty unknown" and ", repeatability only" follow where they hold. Numbers and units are those of
 * `printQuantity` and `printUncertainty`. One unit for both: NIST SP 811, 7.2; a temperature's in °C, since an interval of 1 °C is one of 1 K
 * (SI Brochure, 9th edition, 2.3.1).
 */
export function printWithUncertainty(quantity: Quantity, options: WithUncertaintyOptions = {}): string {
  const { unit: asked, signed } = options;
  const { number, unit } = printQuantity(quantity, asked === undefined ? {} : { unit: asked });
  const unknown = quantity.parts === null && !options.interval;
  const limit = unknown ? 'uncertainty unknown' : quantity.repeatabilityOnly ? 'repeatability only' : '';
  const value = signed && !number.startsWith('\u2212') && /[1-9]/.test(number) ? `+${number}` : number;
  const text = withInterval(value, unit, statedInterval(quantity, options));
  return limit === '' ? text : `${text}, ${limit}`;
}

function withInterval(value: string, unit: string, stated: ReturnType<typeof statedInterval>): string {
  const withUnit = (number: string, its: string) => (its === '' ? number : `${number}${NO_BREAK}${its}`);
  if (stated === null) return withUnit(value, unit);
  if ('low' in stated) return `${withUnit(value, unit)} (${stated.low} to ${stated.high})`;
  const plusMinus = `±${NO_BREAK}${stated.half}`;
  if (stated.unit === (unit === '°C' ? 'K' : unit)) return withUnit(`${value}${NO_BREAK}${plusMinus}`, unit);
  return `${withUnit(value, unit)} ${withUnit(plusMinus, stated.unit)}`;
}
