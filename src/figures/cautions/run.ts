/** The cautions that a run's own setting, device, instruments and figures call for. */
import { printQuantity } from '../../quantities/print.ts';
import { CLOCK_TOLERANCE } from '../clock/setting.ts';
import type { RunContext } from '../context.ts';
import { type Figure, isPresent, type RunFigures } from '../figure.ts';
import { duration } from '../in-words.ts';
import { type Caution, caution } from './caution.ts';
import { hotSurface } from './hot-surface.ts';

/** From this much load on, s, a soak runs unattended in practice. */
const LONG = 1800;

/** The cautions of a run, in a fixed order; none where nothing calls for one. Device figures hold for one specimen, not for others. */
export function cautions(context: RunContext, derived: RunFigures): Caution[] {
  const all = [
    raisedVoltage(context),
    aboveRating(context, derived),
    heldHot(derived),
    hotSurface(derived),
    mainsSide(context),
    battery(context),
    unattended(derived),
  ];
  return all.filter((each) => each !== null);
}

function raisedVoltage({ setting: { voltageOffset } }: RunContext): Caution | null {
  if (!voltageOffset || !(voltageOffset.value > 0)) return null;
  return caution('raised-voltage', `The core voltage was raised by ${printQuantity(voltageOffset).text}.`);
}

function aboveRating({ setting, device }: RunContext, { figures }: RunFigures): Caution | null {
  const rated = device.ratedClock;
  if (!rated) return null;
  const measured = figures.get('mean_clock');
  const clock = [setting.clock, measured && isPresent(measured) ? measured.quantity : undefined]
    .filter((each) => each?.unit === rated.unit)
    .find((each) => each!.value > rated.value * (1 + CLOCK_TOLERANCE));
  if (!clock) return null;
  const done = `The device ran at ${printQuantity(clock).text}, above its rated ${printQuantity(rated).text}.`;
  return caution('clock-above-rating', done);
}

function heldHot({ figures }: RunFigures): Caution | null {
  const held = [...figures].filter(([, figure]) => figure.name === 'held_at_limit' && isPositive(figure));
  const over = [...figures].filter(([, figure]) => figure.name === 'throttle_headroom' && isNegative(figure));
  if (held.length + over.length === 0) return null;
  const longest = held.reduce((time, [, figure]) => Math.max(time, isPresent(figure) ? figure.quantity.value : 0), 0);
  const what = longest > 0 ? `was at its throttling temperature for ${duration(longest)}` : 'passed its throttling temperature';
  return caution('held-at-limit', `The device ${what}.`);
}

function isPositive(figure: Figure): boolean {
  return isPresent(figure) && figure.quantity.value > 0;
}

function isNegative(figure: Figure): boolean {
  return isPresent(figure) && figure.quantity.value < 0;
}

function mainsSide({ instruments }: RunContext): Caution | null {
  const meters = Object.values(instruments).filter((instrument) => instrument.connected === 'mains side');
  if (meters.length === 0) return null;
  const named = meters
    .map((meter) => meter.title)
    .sort()
    .join(', ');
  return caution('mains-side', `Readings were taken on the mains side (${named}).`);
}

function battery({ device }: RunContext): Caution | null {
  return device.power === 'battery' ? caution('battery', 'The device holds a battery.') : null;
}

function unattended({ phases }: RunFigures): Caution | null {
  const load = phases.find((phase) => phase.name === 'load');
  const lasted = load && load.toRow > load.fromRow ? load.to - load.from : 0;
  return lasted < LONG ? null : caution('long-soak', `The load lasted ${duration(lasted)}.`);
}
