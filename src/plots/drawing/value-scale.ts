/** The value axis of a panel of readings. */
import type { QuantityKind } from '../../intake/log.ts';
import { limitsOf } from './labels/limit-marks.ts';
import { niceScale, type Scale } from './ticks.ts';

/** Quantities whose axis begins at zero, because their size means something. */
const FROM_ZERO = new Set<QuantityKind>(['power', 'current', 'energy', 'utilisation', 'charge_level', 'fan']);
/** An axis spans at least this share of its values, so that noise does not fill it; temperatures at least 8 K. */
const LEAST_SHARE = 0.1;
const LEAST_KELVIN = 8;
/** A limit that would stretch the axis by more than this share is named at the edge instead of drawn. */
const FAR = 0.8;
/** Room above a limit for its name, as a share of the axis. */
const NAME = 0.08;

/** A flag is down or up. */
const FLAG: Scale = { from: 0, to: 1, ticks: [0, 1], decimals: 0 };

export interface Ranged {
  readonly kind: QuantityKind;
  /** A rise over ambient begins at zero. */
  readonly rise: boolean;
  readonly lines: readonly { readonly y: Float64Array; readonly limit?: number; readonly label: string }[];
}

/** An axis that holds all readings, and the throttle limit unless that lies far off. */
export function valueScale(panel: Ranged, ticks: number): Scale {
  if (panel.kind === 'throttle_flag') return FLAG;
  const [lowest, highest] = extent(panel.lines);
  const zero = FROM_ZERO.has(panel.kind) || panel.rise || nearlyFromZero(panel, lowest, highest);
  const low = zero ? Math.min(0, lowest) : lowest;
  const high = zero ? Math.max(0, highest) : highest;
  const missing = Math.max(0, leastSpan(panel, low, high) - (high - low));
  const [from, to] = zero ? [low, high + missing] : [low - missing / 2, high + missing / 2];
  const limits = limitsOf(panel.lines).map(({ value }) => value);
  const near = limits.filter((limit) => limit >= from && limit - to <= FAR * (to - from));
  return niceScale(from, Math.max(to, ...near.map((limit) => limit + NAME * (to - from))), ticks);
}

/** An axis of a quantity with a true zero that would all but reach it begins there, so that heights can be compared. */
function nearlyFromZero({ kind }: Ranged, low: number, high: number): boolean {
  return (kind === 'clock' || kind === 'voltage') && low >= 0 && low < high / 2;
}

function leastSpan({ kind }: Ranged, low: number, high: number): number {
  return kind === 'temperature' || kind === 'ambient' ? LEAST_KELVIN : LEAST_SHARE * Math.max(Math.abs(low), Math.abs(high));
}

/** Lowest and highest of all lines. */
export function extent(lines: readonly { readonly y: Float64Array }[]): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { y } of lines) {
    for (const value of y) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return [low, high];
}
