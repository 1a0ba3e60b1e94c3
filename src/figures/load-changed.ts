/** Whether the load stayed the same, and how it was cooled: a fit of one step and an extrapolation rest on that. */
import type { Channel } from '../intake/log.ts';
import { lineFit } from '../statistics/line-fit.ts';
import { mean } from '../statistics/mean.ts';
import { quantile } from '../statistics/quantile.ts';
import { isReason, type Reason } from './absent.ts';
import { tellingClock, throttlingOf } from './clock/throttle.ts';
import { duration, plain } from './in-words.ts';
import type { Meter } from './power/meters.ts';
import { type Readings, readingsOf } from './readings.ts';
import { channelsOf, phaseOf, type Rows, rowsOf, type Soak } from './soak.ts';
import { ambientOver } from './thermal/ambient.ts';

/** Means over this many seconds are compared with their median: short ones tell a boost, long ones a governor whose cycle is short … */
const BLOCKS = [10, 120];
/** … and the load changed when they lie off to one side for as long as this, s, … */
const LASTING = 30;
/** … by more than this share. Power follows the die's temperature (leakage), so it may drift further than a clock. */
const POWER_SHARE = 0.1;
const CLOCK_SHARE = 0.03;
/** A fan's speed departs from its median by more than this share of its highest … */
const FAN_SHARE = 0.1;
/** … so many times where it switches to and fro. One that follows the temperature up departs once, before its median. */
const SWITCHES = 2;

/**
 * Why the load does not count as constant, told from the primary power and the delivered clock, or else from throttle flags; null when it does.
 * A requested clock that changes tells that the load did, but one that stays tells nothing. A fan that switches to and fro changes how the device is
 * cooled, which is as bad.
 */
export function loadChange(soak: Soak, meter: Meter | null): Reason | null {
  const load = phaseOf(soak, 'load');
  if (!load) return null;
  const clock = tellingClock(soak);
  const seen = [
    clock && { name: `The clock (channel ${clock.name})`, values: clock.values, share: CLOCK_SHARE },
    meter && { name: `The power (channel ${meter.name})`, values: meter.values, share: POWER_SHARE },
  ];
  for (const each of seen) {
    if (!each) continue;
    const readings = readingsOf(soak.log, each.values, rowsOf(load));
    for (const length of BLOCKS) {
      const change = longestDeparture(blockMeans(readings, length), each.share);
      if (!change) continue;
      const leaks = each.values === meter?.values ? leakage(soak, meter, length, clock?.shows === 'delivered') : null;
      return leaks ?? reasonOf(each.name, change, load.from);
    }
  }
  const witnessed = clock?.shows === 'delivered' || meter ? null : throttled(soak, load.from);
  return witnessed ?? fanSwitched(soak, rowsOf(load));
}

function fanSwitched(soak: Soak, rows: Rows): Reason | null {
  for (const { name, values } of channelsOf(soak.log, 'fan')) {
    const readings = readingsOf(soak.log, values, rows);
    const highest = readings.y.reduce((most, value) => Math.max(most, value), 0);
    const switched = lastingDepartures(blockMeans(readings, BLOCKS[0]!), FAN_SHARE, () => highest);
    if (switched.length < SWITCHES) continue;
    const why = `The fan (channel ${name}) switched to and fro under load, ${switched.length} times or more, so the device was not cooled in one way.`;
    return { absent: 'load-changed', why };
  }
  return null;
}

/** Whether the log shows what the load was: its power, or a delivered clock; a requested one shows nothing of it. */
export function loadIsLogged(soak: Soak, meter: Meter | null): boolean {
  return meter !== null || tellingClock(soak)?.shows === 'delivered';
}

/** Where nothing else tells of the load, a device that throttled did not keep it. */
function throttled(soak: Soak, start: number): Reason | null {
  const throttling = throttlingOf(soak);
  const first = isReason(throttling) ? undefined : throttling.onsets[0];
  if (!first) return null;
  const when = duration(soak.log.time.seconds[first.row]! - start);
  return { absent: 'load-changed', why: `The device throttled from ${when} of the load on, so this was not one constant load.` };
}

/** Power answers to the temperature where a line through block means leaves this little of its variance, with a slope above zero. */
const FOLLOWS = 0.05;

/** A load that changes slowly is followed by the temperature in proportion. Leakage makes less than this share of that, or it would double the rise. */
const MOST_LEAKAGE = 0.5;

/**
 * Why the load does not count as constant where its power rose along with the first temperature: leakage of a chip rises with the temperature of the
 * moment, while a load that changes is followed by the temperature later, or in proportion. Null where it did not, where blocks are too few to tell,
 * or where neither the ambient nor an idle phase tells what the power had raised the temperature by.
 */
function leakage(soak: Soak, meter: Meter, length: number, clocked: boolean): Reason | null {
  const channel = channelsOf(soak.log, 'temperature')[0];
  const load = phaseOf(soak, 'load');
  if (!channel || !load) return null;
  const drawn = blockMeans(readingsOf(soak.log, meter.values, rowsOf(load)), length).slice(1);
  const warm = new Map(
    blockMeans(readingsOf(soak.log, channel.values, rowsOf(load)), length).map((block) => [block.from, block.mean]),
  );
  const pairs = drawn.flatMap(({ from, mean }) => (warm.has(from) ? [[warm.get(from)!, mean] as const] : []));
  const temperatures = pairs.map(([temperature]) => temperature);
  if (pairs.length < FEWEST_PAIRS || new Set(temperatures).size < 2) return null;
  const watts = pairs.map(([, drawn]) => drawn);
  const { slope, rSquared } = lineFit(temperatures, watts);
  const origin = originOf(soak, channel, meter);
  if (!(origin && slope > 0 && rSquared >= 1 - FOLLOWS)) return null;
  const proportional = (mean(watts) - origin.watts) / (mean(temperatures) - origin.temperature);
  if (!(slope < MOST_LEAKAGE * proportional)) return null;
  const stayed = clocked ? ', while the clock stayed' : '';
  const why = `The power (channel ${meter.name}) rose along with the temperature (channel ${channel.name}), by ${plain(slope)} W per kelvin${stayed}: that is how leakage of a chip answers to its temperature. The work may have been constant, but the heat was not.`;
  return { absent: 'load-changed', why };
}

/** What the temperature would be at which power: no power at the ambient of the load, else the means of the idle phase. */
function originOf(soak: Soak, { values }: Channel, meter: Meter): { readonly temperature: number; readonly watts: number } | null {
  const [load, idle] = [phaseOf(soak, 'load'), phaseOf(soak, 'idle')];
  const ambient = load && ambientOver(soak, rowsOf(load), 'ambient.load');
  if (ambient && !isReason(ambient)) return { temperature: ambient.quantity.value, watts: 0 };
  if (!idle) return null;
  const [resting, drawn] = [values, meter.values].map((of) => readingsOf(soak.log, of, rowsOf(idle)).y);
  return resting!.length > 0 && drawn!.length > 0 ? { temperature: mean(resting!), watts: mean(drawn!) } : null;
}

/** Fewer pairs of block means lie on a line too easily. */
const FEWEST_PAIRS = 6;

interface Departure {
  readonly from: number;
  readonly to: number;
  /** Mean of the stretch over the median of all, less one. */
  readonly share: number;
}

function reasonOf(name: string, { from, to, share }: Departure, start: number): Reason {
  const side = share > 0 ? 'above' : 'below';
  const when = `from ${duration(from - start)} to ${duration(to - start)} of the load`;
  const why = `${name} was ${plain(Math.abs(share) * 100)} % ${side} its median ${when}, so this was not one constant load.`;
  return { absent: 'load-changed', why };
}

/** A stretch of blocks on one side of the median. */
interface Run {
  readonly from: number;
  to: number;
  sum: number;
  blocks: number;
}

/** The longest stretch of blocks on one side of the median by more than `share` of it, when it lasts. */
function longestDeparture(all: readonly Block[], share: number): Departure | null {
  const lasting = lastingDepartures(all, share, Math.abs);
  if (lasting.length === 0) return null;
  const {
    from,
    to,
    sum,
    blocks: count,
  } = lasting.reduce((longest, run) => (run.to - run.from > longest.to - longest.from ? run : longest));
  return { from, to, share: sum / count };
}

/** Stretches of blocks on one side of the median by more than `share` of a scale, which last. The first block may hold the edge itself. */
function lastingDepartures(all: readonly Block[], share: number, scaleOf: (median: number) => number): Run[] {
  const blocks = all.slice(1);
  if (blocks.length < 3) return [];
  const median = quantile(
    blocks.map((block) => block.mean),
    0.5,
  );
  const runs: Run[] = [];
  let side = 0;
  for (const { from, to, mean } of blocks) {
    const off = (mean - median) / scaleOf(median);
    const now = Math.abs(off) > share ? Math.sign(off) : 0;
    const run = runs[runs.length - 1];
    if (now !== 0 && now === side && run) {
      run.to = to;
      run.sum += off;
      run.blocks++;
    } else if (now !== 0) runs.push({ from, to, sum: off, blocks: 1 });
    side = now;
  }
  return runs.filter((run) => run.blocks >= 2 && run.to - run.from >= LASTING);
}

interface Block {
  readonly from: number;
  readonly to: number;
  readonly mean: number;
}

/** Means over blocks of that many seconds, or of three readings where these are further apart. */
function blockMeans({ t, y }: Readings, length: number): Block[] {
  const blocks: Block[] = [];
  for (let i = 0; i < t.length; ) {
    const from = t[i]!;
    let [sum, n] = [0, 0];
    while (i < t.length && (t[i]! < from + length || n < 3)) {
      sum += y[i++]!;
      n++;
    }
    blocks.push({ from, to: t[Math.min(i, t.length - 1)]!, mean: sum / n });
  }
  return blocks;
}
