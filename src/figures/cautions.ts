/** Safety notices that a run's own data or setting calls for. */
import { printQuantity } from '../quantities/print.ts';
import { CLOCK_SLACK } from './clock/setting.ts';
import type { RunContext } from './context.ts';
import { type Figure, isPresent, type RunFigures } from './figure.ts';
import { duration } from './in-words.ts';

export interface Caution {
  /** Permanent name: `raised-voltage`. */
  readonly id: string;
  /** What it says, whole sentences: what was done, what that risks, whom to ask. */
  readonly text: string;
}

/** From this much load on, s, a soak runs unattended in practice. */
const LONG = 1800;

/** The cautions of a run, in a fixed order; none where nothing calls for one. Device figures hold for one specimen, not for others. */
export function cautions(context: RunContext, derived: RunFigures): Caution[] {
  const all = [
    raisedVoltage(context),
    aboveRating(context, derived),
    heldHot(derived),
    mainsSide(context),
    battery(context),
    unattended(derived),
  ];
  return all.filter((caution) => caution !== null);
}

const NOT_ADVICE = 'What this specimen stood is no advice for another.';

function raisedVoltage({ setting: { voltageOffset } }: RunContext): Caution | null {
  if (!voltageOffset || !(voltageOffset.value > 0)) return null;
  const by = printQuantity(voltageOffset).text;
  return {
    id: 'raised-voltage',
    text: `The core voltage was raised by ${by}. A raised voltage can damage or age the device for good, overheat it, end its warranty and lose data. ${NOT_ADVICE}`,
  };
}

function aboveRating({ setting, device }: RunContext, { figures }: RunFigures): Caution | null {
  const rated = device.ratedClock;
  if (!rated) return null;
  const measured = figures.get('mean_clock');
  const clock = [setting.clock, measured && isPresent(measured) ? measured.quantity : undefined]
    .filter((each) => each?.unit === rated.unit)
    .find((each) => each!.value > rated.value * (1 + CLOCK_SLACK));
  if (!clock) return null;
  return {
    id: 'clock-above-rating',
    text: `The device ran at ${printQuantity(clock).text}, above its rated ${printQuantity(rated).text}. That can damage the device, end its warranty, give wrong results and lose data. ${NOT_ADVICE} Keep a backup.`,
  };
}

function heldHot({ figures }: RunFigures): Caution | null {
  const held = [...figures].filter(([, figure]) => figure.name === 'held_at_limit' && isPositive(figure));
  const over = [...figures].filter(([, figure]) => figure.name === 'throttle_headroom' && isNegative(figure));
  if (held.length + over.length === 0) return null;
  const longest = held.reduce((time, [, figure]) => Math.max(time, isPresent(figure) ? figure.quantity.value : 0), 0);
  const what = longest > 0 ? `was at its throttling temperature for ${duration(longest)}` : 'passed its throttling temperature';
  return {
    id: 'held-at-limit',
    text: `The device ${what}. Held at its limit it ages faster, may restart and lose data, and surfaces near it can burn skin. Let it cool before touching it.`,
  };
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
  return {
    id: 'mains-side',
    text: `Readings were taken on the mains side (${named}). Mains voltage can kill by shock and start a fire: use only meters made and rated for it, never open one or a supply under voltage, and leave wiring to licensed people under the local electrical code.`,
  };
}

function battery({ device }: RunContext): Caution | null {
  if (device.power !== 'battery') return null;
  return {
    id: 'battery',
    text: 'The device holds a battery. Heat and sustained load can make a lithium cell swell, vent or catch fire: watch it, keep it off flammable ground, stop when it swells or smells, and dispose of cells as local rules say.',
  };
}

function unattended({ phases }: RunFigures): Caution | null {
  const load = phases.find((phase) => phase.name === 'load');
  const lasted = load ? load.to - load.from : 0;
  if (lasted < LONG) return null;
  return {
    id: 'long-soak',
    text: `The load lasted ${duration(lasted)}. A device under sustained load is a fire and burn hazard: do not leave it alone, keep it on ground that does not burn with its air free, and follow local fire rules.`,
  };
}
