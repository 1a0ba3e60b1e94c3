/** Clock figures of a run, channel by channel. */
import type { Channel } from '../../intake/log.ts';
import { exact } from '../../quantities/uncertainty.ts';
import { normalQuantile } from '../../statistics/normal-quantile.ts';
import { absent, isReason, noChannel, noPhase, noReadings, type Of, type Reason } from '../absent.ts';
import { clockOf, fromOf, gapsOf, type Measured, meanOf, overPhase, placeOf, samplingWords } from '../average.ts';
import type { CLOCK } from '../catalogue/clock.ts';
import { figuresOf } from '../catalogue.ts';
import { extremeOf } from '../extreme.ts';
import type { Figure } from '../figure.ts';
import { counted, duration, plain } from '../in-words.ts';
import { stepIn } from '../origin.ts';
import { figureOf, ofChannel } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { addressOf, channelsOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { quantityOf, samplingPart, stepPart } from '../sources.ts';
import { timeWhere } from '../time-where.ts';
import { clockPercentile } from './percentiles.ts';
import { loadedAt, thresholdOf } from './setting.ts';
import { clockShares } from './shares.ts';
import { stickyWords } from './sticky.ts';
import { sustainedRatio } from './sustained.ts';
import { type Throttling, throttlingOf } from './throttle.ts';

/** A clock channel with what its figures are made from. */
interface Clocked {
  readonly soak: Soak;
  readonly channel: Channel;
  readonly index: number;
}

/** A figure of each clock channel, figures of the primary one, or one of the run, told by flags or by the primary clock. */
type Maker =
  | { readonly of: 'channel'; readonly make: (clocked: Clocked) => Entry }
  | { readonly of: 'primary'; readonly make: (clocked: Clocked) => Entry[] }
  | { readonly of: 'run'; readonly make: (soak: Soak, throttling: Throttling | Reason) => Figure };

const ofEach = (make: (clocked: Clocked) => Entry): Maker => ({ of: 'channel', make });
const ofRun = (make: (soak: Soak, throttling: Throttling | Reason) => Figure): Maker => ({ of: 'run', make });

/** What makes each clock figure: one of the catalogue that is left out here does not compile. */
const FIGURES: Readonly<Record<keyof typeof CLOCK, Maker>> = {
  mean_clock: ofEach(({ soak, channel, index }) => meanClock(soak, channel, 'load', addressOf('mean_clock', channel, index))),
  lowest_clock: ofEach(({ soak, channel, index }) => lowestClock(soak, channel, index)),
  clock_percentile_1: ofEach(({ soak, channel, index }) => clockPercentile(soak, channel, index, 'clock_percentile_1', 0.01)),
  clock_percentile_5: ofEach(({ soak, channel, index }) => clockPercentile(soak, channel, index, 'clock_percentile_5', 0.05)),
  median_clock: ofEach(({ soak, channel, index }) => clockPercentile(soak, channel, index, 'median_clock', 0.5)),
  clock_share: { of: 'primary', make: ({ soak, channel }) => clockShares(soak, channel) },
  time_below_setting: ofEach(({ soak, channel, index }) => timeBelowSetting(soak, channel, index)),
  sustained_ratio: ofEach(({ soak, channel, index }) => sustainedRatio(soak, channel, index)),
  throttle_events: ofRun((soak, throttling) =>
    figureOf('throttle_events', soak, throttleEvents(soak, throttling), missedInterval(throttling)),
  ),
  time_to_throttle: ofRun((soak, throttling) => {
    const time = timeToThrottle(soak, throttling);
    return figureOf('time_to_throttle', soak, time, isReason(time) ? {} : { interval: time.interval });
  }),
};

export function clockFigures(soak: Soak): Entry[] {
  const channels = channelsOf(soak.log, 'clock');
  const throttling = throttlingOf(soak);
  const byPhase = soak.phases
    .filter(({ name }) => channels.length > 0 && name !== 'load')
    .map(({ name }) => meanClock(soak, channels[0]!, name, `mean_clock.${name}`));
  const byName = figuresOf('clock').flatMap((name): Entry[] => {
    const maker = FIGURES[name];
    if (maker.of === 'run') return [[name, maker.make(soak, throttling)]];
    if (channels.length === 0) return [[name, absent(name, noChannel('clock'))]];
    if (maker.of === 'primary') return ofChannel(channels[0]!, maker.make({ soak, channel: channels[0]!, index: 0 }));
    return channels.flatMap((channel, index) => ofChannel(channel, [maker.make({ soak, channel, index })]));
  });
  return [...byPhase, ...byName];
}

/** Hz, over a phase. */
function meanClock(soak: Soak, channel: Channel, phaseName: string, address: string): Entry {
  const phase = phaseOf(soak, phaseName);
  if (!phase) return [address, absent('mean_clock', noPhase(soak, phaseName))];
  const mean = meanOf(soak, channel, rowsOf(phase), address, overPhase(phase));
  return [address, figureOf('mean_clock', soak, mean, { of: { phase: phaseName } })];
}

/** Hz, the smallest reading under load. */
function lowestClock(soak: Soak, channel: Channel, index: number): Entry {
  const address = addressOf('lowest_clock', channel, index);
  const lowest = extremeOf(soak, channel, 'lowest', address);
  const interval = !isReason(lowest) && lowest.interval ? { interval: lowest.interval } : {};
  return [address, figureOf('lowest_clock', soak, lowest, { of: { phase: 'load' }, ...interval })];
}

function timeBelowSetting(soak: Soak, channel: Channel, index: number): Entry {
  const address = addressOf('time_below_setting', channel, index);
  return [address, figureOf('time_below_setting', soak, belowSetting(soak, channel, address))];
}

/** s, of the loaded rows of the load phase. */
function belowSetting(soak: Soak, channel: Channel, address: string): Measured | Reason {
  const threshold = thresholdOf(soak, channel);
  if (isReason(threshold)) return threshold;
  const phase = phaseOf(soak, 'load');
  if (!phase) return noPhase(soak, 'load');
  const loaded = loadedAt(soak, channel);
  const values = channel.values.map((value, row) => (loaded(row) ? value : Number.NaN));
  const readings = readingsOf(soak.log, values, rowsOf(phase));
  if (readings.y.length < 2) return noReadings(channel.name, 'the loaded part of the load phase');
  const { time, u } = timeWhere(readings, (value) => value < threshold.below, stepIn(soak.log, channel.log) ?? 0, phase);
  return {
    quantity: quantityOf(time, 's', [samplingPart(soak.context, address, u, null)], { stated: true, step: 0 }),
    from: fromOf(soak, [channel, ...channelsOf(soak.log, 'utilisation').slice(0, 1)], readings),
    of: {
      ...placeOf(channel),
      tolerance: `${plain(threshold.tolerance / 1e6)} MHz`,
      ...samplingWords(soak, channel),
      ...gapsOf(readings),
    },
  };
}

/** The count's lower end is certain; its upper one is that of a two-sided interval of 95 %. */
const UPPER = normalQuantile(0.975);

/**
 * How many states no reading caught, at most, where so many were read once. Of states whose lengths are exponentially distributed about
 * some steps of the log, half as many fall between two readings as are read once (s/2m of s/m, for a step s and a mean length m); both
 * numbers are of Poisson's distribution, so that the one less half of the other has a variance of 3/4 of the other. Derived here.
 */
function unread(singles: number): number {
  return Math.ceil(singles / 2 + UPPER * Math.sqrt(0.75 * singles));
}

/**
 * The count may be higher by what sticky bits tell that was missed; by the single readings, low ones and those at the setting within a fall;
 * and by what came and went between two readings, as single readings tell of it. Without either it is exact as a count.
 */
function missedInterval(throttling: Throttling | Reason): { readonly interval?: readonly [number, number] } {
  if (isReason(throttling)) return {};
  const { onsets, missed, lone, loneUp } = throttling;
  const singles = lone.length + loneUp.length;
  const unseen = missed.length + singles + unread(singles);
  return unseen === 0 ? {} : { interval: [onsets.length, onsets.length + unseen] };
}

/** A clock changes as fast as it was logged where it was low, or up again, for single readings so often, more than half as often as it fell for longer, and in such a share of all. */
const LONE = 4;
const LONE_SHARE = 0.01;

function isTooQuick({ lone, loneUp, onsets, phase }: Throttling): boolean {
  const singles = Math.max(lone.length, loneUp.length);
  return singles >= LONE && 2 * singles > onsets.length && singles > LONE_SHARE * (phase.toRow - phase.fromRow);
}

function tooQuick({ onsets, lone, loneUp, channels }: Throttling): Reason {
  const [count, where] = lone.length >= loneUp.length ? [lone.length, 'below'] : [loneUp.length, 'back at'];
  const fell = `${where === 'below' ? 'and' : 'and below it'} for longer ${counted(onsets.length, 'time')}`;
  const why = `The clock ${channels[0]!.name} was ${where} its setting for a single reading ${counted(count, 'time')}, ${fell}: it changes as fast as it was logged, so that its falls cannot be counted.`;
  return { absent: 'not-observed', why };
}

/** A count of onsets; what happened between two readings is not in it. */
function throttleEvents(soak: Soak, throttling: Throttling | Reason): Measured | Reason {
  if (isReason(throttling)) return throttling;
  const { onsets, channels, by, reasons, sticky, missed } = throttling;
  if (isTooQuick(throttling)) return tooQuick(throttling);
  const known = new Map(reasons.map((reason) => [reason, 0]));
  for (const { reason } of onsets) known.set(reason, (known.get(reason) ?? 0) + 1);
  const list = [...known].map(([reason, count]) => `${reason}: ${count}`).join(', ');
  return {
    quantity: exact(onsets.length, '1'),
    from: fromOf(soak, channels, { lines: linesOf(soak, throttling) }),
    of: {
      by,
      ...clockWords(channels),
      ...(list ? { reason: list } : {}),
      ...samplingWords(soak, channels[0]!),
      ...stickyWords(sticky, missed),
    },
  };
}

/** Whether a clock that throttling was told by is the requested or the delivered one. */
function clockWords([channel]: readonly Channel[]): Of {
  return channel ? clockOf(channel) : {};
}

/** The first thing that tells of throttling, and since when it may have been so, s since the log's first row. */
interface First {
  readonly row: number;
  readonly since: number;
  readonly reason: string;
  readonly by: string;
}

/** An onset, or a sticky bit that came on under load before any: then something was missed, but not that it was. */
/** A single low reading before the first fall may have been the first. */
function firstOf(soak: Soak, { onsets, missed, lone, by, channels }: Throttling): First | undefined {
  const { seconds } = soak.log.time;
  const step = stepIn(soak.log, channels[0]?.log);
  const seen = onsets.slice(0, 1).map(({ row, reason }) => {
    return { row, since: seconds[Math.min(row, ...lone)]! - (step ?? 0), reason, by };
  });
  const unseen = missed.map(({ rose, reason }) => ({
    row: rose!.row,
    since: seconds[rose!.before]!,
    reason,
    by: 'a sticky bit that came on',
  }));
  return [...seen, ...unseen].sort((a, b) => a.row - b.row)[0];
}

/**
 * s from the beginning of the load to the first reading that shows throttling; it came within the step before. Where the beginning was told by
 * the bend of a temperature, it may be off by that to either side.
 */
function timeToThrottle(
  soak: Soak,
  throttling: Throttling | Reason,
): (Measured & { readonly interval: readonly [number, number] }) | Reason {
  if (isReason(throttling)) return throttling;
  const { phase, channels, sticky } = throttling;
  const { seconds } = soak.log.time;
  const first = firstOf(soak, throttling);
  if (!first) {
    const none = `No throttling was seen in ${counted(phase.toRow - phase.fromRow, 'reading')} of the load.`;
    const [alone] = throttling.lone;
    const at = Math.max(phase.fromRow, (alone ?? phase.toRow) - 1);
    const lasted = (seconds[at] ?? phase.from) - phase.from;
    const why =
      alone === undefined
        ? none
        : `${none} A single reading was below the setting ${duration(seconds[alone]! - phase.from)} after it began, which may have been a fall.`;
    return { absent: 'not-throttled', why, bound: { relation: '>', value: lasted, unit: 's' } };
  }
  const bend = phase.fromRow > 0 ? (phase.sharpness ?? 0) : 0;
  const value = seconds[first.row]! - phase.from;
  const earliest = Math.max(0, first.since - phase.from - bend);
  const latest = value + bend;
  return {
    quantity: quantityOf(value, 's', [stepPart(soak.context, 'time_to_throttle', latest - earliest)], { stated: true, step: 0 }),
    from: fromOf(soak, channels, { lines: linesOf(soak, throttling) }),
    of: {
      by: first.by,
      ...clockWords(channels),
      reason: first.reason,
      ...samplingWords(soak, channels[0]!),
      ...stickyWords(sticky, []),
    },
    interval: [earliest, latest],
  };
}

function linesOf(soak: Soak, { phase, channels }: Throttling): readonly [number, number] | null {
  const { lines, joined } = soak.log;
  if (joined) return readingsOf(soak.log, channels[0]!.values, rowsOf(phase)).lines;
  return phase.toRow > phase.fromRow ? [lines[phase.fromRow]!, lines[phase.toRow - 1]!] : null;
}
