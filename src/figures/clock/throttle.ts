/** Throttling: told by the device's own flags where they are logged, else by the clock itself. */
import type { Channel } from '../../intake/log.ts';
import { printQuantity } from '../../quantities/print.ts';
import { isReason, noChannel, noPhase, noReadings, type Reason } from '../absent.ts';
import type { Phase } from '../figure.ts';
import { stepIn } from '../origin.ts';
import { channelsOf, phaseOf, type Soak } from '../soak.ts';
import { nowBits } from './bits.ts';
import { loadedAt, type Threshold, thresholdOf } from './setting.ts';
import { missedIn, type StickyEvent, stickyEvents } from './sticky.ts';

/** One onset of throttling in the load phase. */
export interface Onset {
  readonly row: number;
  readonly reason: string;
}

export interface Throttling {
  readonly phase: Phase;
  readonly channels: readonly Channel[];
  readonly onsets: readonly Onset[];
  /** Rows of single readings below the setting: each may be a fall that was over before the next reading. */
  readonly lone: readonly number[];
  /** Rows of single readings at the setting within a fall: each may be the end of one fall and the beginning of another. */
  readonly loneUp: readonly number[];
  /** How it was told, in words. */
  readonly by: string;
  /** Every reason that the flags name, also those that never came. */
  readonly reasons: readonly string[];
  /** What sticky bits tell of the whole log. They are no onsets: when and how often is not in them. */
  readonly sticky: readonly StickyEvent[];
  /** Of these, what came and went under load between two readings. */
  readonly missed: readonly StickyEvent[];
}

type Told = Omit<Throttling, 'sticky' | 'missed'>;

/** Onsets of throttling under load: rising bits of the flags, by reason, or falls of the clock below its setting. */
export function throttlingOf(soak: Soak): Throttling | Reason {
  const phase = phaseOf(soak, 'load');
  const flags = channelsOf(soak.log, 'throttle_flag');
  const telling = flags.filter((channel) => nowBits(channel).length > 0);
  const clock = tellingClock(soak);
  const sticky = stickyEvents(soak);
  if (telling.length === 0 && !clock) return flags.length > 0 ? onlySticky(flags, sticky) : noChannel('throttle flag or clock');
  if (!phase) return noPhase(soak, 'load');
  const told = telling.length > 0 ? byFlags(telling, phase) : byClock(soak, clock!, phase);
  if (isReason(told)) return told;
  if (flags.length === 0 && told.onsets.length === 0 && clock?.shows !== 'delivered') return unobserved(clock!);
  const channels = [...new Set([...told.channels, ...flags.filter((channel) => channel.sticky !== undefined)])];
  return { ...told, channels, sticky, missed: missedIn(sticky, phase) };
}

/** Flags without a bit that means "now", and no clock beside them. */
function onlySticky(flags: readonly Channel[], sticky: readonly StickyEvent[]): Reason {
  const names = flags.map(({ name }) => name).join(', ');
  const why = `All named bits of ${names} are sticky: they tell that something happened since the boot, not how often.`;
  return { absent: 'no-channel', why: [why, ...sticky.map(({ statement }) => `${capital(statement)}.`)].join(' ') };
}

function capital(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

function byFlags(flags: readonly Channel[], phase: Phase): Told | Reason {
  const bits = flags.flatMap((channel) => nowBits(channel).map((bit) => ({ ...bit, channel })));
  const onsets = bits.flatMap(({ channel, isSet, reason }) => risingRows(channel, isSet, phase).map((row) => ({ row, reason })));
  if (flags.every((channel) => !hasReadings(channel, phase))) return noReadings(flags[0]!.name, 'the load phase');
  onsets.sort((a, b) => a.row - b.row);
  return {
    phase,
    channels: flags,
    onsets,
    lone: [],
    loneUp: [],
    by: 'rising bits of the throttle flags',
    reasons: [...new Set(bits.map((bit) => bit.reason))],
  };
}

function hasReadings(channel: Channel, phase: Phase): boolean {
  for (let row = phase.fromRow; row < phase.toRow; row++) if (!Number.isNaN(channel.values[row]!)) return true;
  return false;
}

/** Rows of the phase where a bit is set that was not set in the reading before; a log that begins with it set counts once. */
function risingRows(channel: Channel, isSet: (word: number) => boolean, phase: Phase): number[] {
  const rows: number[] = [];
  let before = false;
  for (let row = 0; row < phase.toRow; row++) {
    const word = channel.values[row]!;
    if (Number.isNaN(word)) continue;
    const now = isSet(word);
    if (now && !before && row >= phase.fromRow) rows.push(row);
    before = now;
  }
  return rows;
}

/** A governor may take this long to bring the clock up at the beginning of a load, s; or three steps of the log, where these are longer. */
const RAMP = 10;

/** The clock that throttling is told by: a delivered one where there is one, else the primary. */
export function tellingClock(soak: Soak): Channel | undefined {
  const clocks = channelsOf(soak.log, 'clock');
  return clocks.find(({ shows }) => shows === 'delivered') ?? clocks[0];
}

function byClock(soak: Soak, clock: Channel, phase: Phase): Told | Reason {
  const threshold = thresholdOf(soak, clock);
  if (isReason(threshold)) return threshold;
  if (!hasReadings(clock, phase)) return noReadings(clock.name, 'the load phase');
  const ramp = Math.max(RAMP, 3 * (stepIn(soak.log, clock.log) ?? 0));
  const { reached, ...falls } = fallsOf(loadedReadings(soak, clock, phase), threshold, ramp);
  if (!reached) return neverReached(soak, clock);
  return {
    phase,
    channels: [clock],
    ...falls,
    by: `the clock ${clock.name} itself, below its setting for two readings or more`,
    reasons: [],
  };
}

interface ClockReading {
  readonly row: number;
  readonly at: number;
  readonly value: number;
}

function loadedReadings(soak: Soak, clock: Channel, phase: Phase): ClockReading[] {
  const loaded = loadedAt(soak, clock);
  const readings: ClockReading[] = [];
  for (let row = phase.fromRow; row < phase.toRow; row++) {
    const value = clock.values[row]!;
    if (!Number.isNaN(value) && loaded(row)) readings.push({ row, at: soak.log.time.seconds[row]!, value });
  }
  return readings;
}

/**
 * Falls of the clock below its setting: two readings in a row below the threshold begin one, two in a row at half the tolerance or more
 * above it end it, so that a clock that toggles about the threshold falls once. One that is below from the first reading for longer than
 * a governor takes to bring it up counts as a fall at the first; `reached` is false where it never came up. `lone`: single readings below by more
 * than half the tolerance, the last of the load too; `loneUp`: single readings within a fall that would have ended it.
 */
function fallsOf(
  readings: readonly ClockReading[],
  { below, tolerance }: Threshold,
  ramp: number,
): Pick<Throttling, 'onsets' | 'lone' | 'loneUp'> & { readonly reached: boolean } {
  const first = readings.findIndex(({ value }) => value >= below);
  if (first < 0) return { onsets: [], lone: [], loneUp: [], reached: readings.length === 0 };
  const late = first > 0 && readings[first]!.at - readings[0]!.at > ramp;
  const onsets: Onset[] = late ? [{ row: readings[0]!.row, reason: 'clock below its setting from the start' }] : [];
  let down = late;
  let candidate: ClockReading | null = null;
  const lone: number[] = [];
  const loneUp: number[] = [];
  const keepLone = () => {
    if (candidate === null) return;
    if (down) loneUp.push(candidate.row);
    else if (candidate.value < below - tolerance / 2) lone.push(candidate.row);
  };
  for (const reading of readings.slice(first)) {
    const turns = down ? reading.value >= below + tolerance / 2 : reading.value < below;
    if (turns && candidate) {
      if (!down) onsets.push({ row: candidate.row, reason: 'clock below its setting' });
      down = !down;
      candidate = null;
    } else {
      keepLone();
      candidate = turns ? reading : null;
    }
  }
  keepLone();
  return { onsets, lone, loneUp, reached: true };
}

function neverReached(soak: Soak, clock: Channel): Reason {
  const setting = printQuantity(soak.context.setting.clock!).text;
  const why = `The clock ${clock.name} was below its setting of ${setting} from the first reading of the load to the last: it was throttled from the start, or the setting was not in force. The log does not tell which.`;
  return { absent: 'not-observed', why };
}

/** A clock that was only asked for stays up while the chip runs slower: that it never fell shows nothing. */
function unobserved(clock: Channel): Reason {
  const shows =
    clock.shows === 'requested'
      ? `The clock ${clock.name} is the one that was requested: it stays up while the chip is throttled`
      : `Nobody says whether the clock ${clock.name} was requested or delivered, and a requested one stays up while the chip is throttled`;
  return {
    absent: 'not-observed',
    why: `${shows}. That it never fell below its setting does not show that there was no throttling.`,
  };
}
