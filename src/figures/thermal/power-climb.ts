/** Whether a power that climbs through the load explains what the temperature still climbs at its end. */
import { lineFit } from '../../statistics/line-fit.ts';
import { mean } from '../../statistics/mean.ts';
import type { Reason } from '../absent.ts';
import { plain } from '../in-words.ts';
import type { Meter } from '../power/meters.ts';
import { type Readings, readingsOf } from '../readings.ts';
import { phaseOf, rowsOf, type Soak } from '../soak.ts';
import type { LoadSeries } from './load-series.ts';

/** The climbs are compared over this share of the load, at its end: the main part is then over, mostly. */
const LAST = 1 / 3;
/** Fewer readings do not tell a climb. */
const FEWEST = 10;
/** A climb of the power is told where it is so many times its standard uncertainty. */
const SIGMAS = 3;
/**
 * The power explains the climb where it would account for half of it or more: leakage that answers to the temperature accounts for less, or it would
 * double the rise of the device.
 */
const EXPLAINS = 0.5;

/** Why the end is not told where the power still climbed; null where its climb is not told, or is too small for what the temperature climbed. */
export function powerClimb(soak: Soak, { channel, phase, readings, lasted }: LoadSeries, meter: Meter): Reason | null {
  const power = readingsOf(soak.log, meter.values, rowsOf(phase));
  const from = phase.from + lasted * (1 - LAST);
  const [warmed, grew] = [climbOf(readings, from), climbOf(power, from)];
  if (!warmed || !grew || !(warmed.climb > 0) || grew.climb < SIGMAS * grew.u) return null;
  const idle = phaseOf(soak, 'idle');
  const before = idle ? readingsOf(soak.log, meter.values, rowsOf(idle)).y : [];
  const added = grew.level - (before.length > 0 ? mean(before) : 0);
  if (!(added > 0)) return null;
  const caused = ((warmed.level - readings.y[0]!) / added) * grew.climb;
  if (caused < EXPLAINS * warmed.climb) return null;
  const share = plain((100 * grew.climb) / grew.level);
  const why = `The power (channel ${meter.name}) climbed by ${share} % over the last third of the load, which accounts for ${plain(caused)} K of the ${plain(warmed.climb)} K that ${channel.name} climbed there. Under a load that climbs, the temperature has no end.`;
  return { absent: 'load-changed', why };
}

interface Climb {
  /** Change of the line through the readings, from its beginning to its end. */
  readonly climb: number;
  readonly u: number;
  readonly level: number;
}

function climbOf({ t, y }: Readings, from: number): Climb | null {
  const first = t.findIndex((time) => time >= from);
  if (first < 0 || t.length - first < FEWEST) return null;
  const [late, values] = [t.subarray(first), y.subarray(first)];
  const span = late[late.length - 1]! - late[0]!;
  if (!(span > 0)) return null;
  const { slope, uSlope } = lineFit(late, values);
  return { climb: slope * span, u: uSlope * span, level: mean(values) };
}
