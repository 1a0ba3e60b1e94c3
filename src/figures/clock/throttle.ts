/** Throttling: told by the device's own flags where they are logged, else by the clock itself. */
import type { Channel } from '../../intake/log.ts';
import { isReason, noChannel, noPhase, noReadings, type Reason } from '../absent.ts';
import type { Phase } from '../figure.ts';
import { channelsOf, phaseOf, type Soak } from '../soak.ts';
import { nowBits } from './bits.ts';
import { loadedAt, thresholdOf } from './setting.ts';
import { missedIn, type StickyTold, stickyTold } from './sticky.ts';

/** One onset of throttling in the load phase. */
export interface Onset {
  readonly row: number;
  readonly reason: string;
}

export interface Throttling {
  readonly phase: Phase;
  readonly channels: readonly Channel[];
  readonly onsets: readonly Onset[];
  /** How it was told, in words. */
  readonly by: string;
  /** Every reason that the flags name, also those that never came. */
  readonly reasons: readonly string[];
  /** What sticky bits tell of the whole log. They are no onsets: when and how often is not in them. */
  readonly sticky: readonly StickyTold[];
  /** Of these, what came and went under load between two readings. */
  readonly missed: readonly StickyTold[];
}

type Told = Omit<Throttling, 'sticky' | 'missed'>;

/** Onsets of throttling under load: rising bits of the flags, by reason, or falls of the clock below its setting. */
export function throttlingOf(soak: Soak): Throttling | Reason {
  const phase = phaseOf(soak, 'load');
  const flags = channelsOf(soak.log, 'throttle_flag');
  const telling = flags.filter((channel) => nowBits(channel).length > 0);
  const clock = channelsOf(soak.log, 'clock')[0];
  const sticky = stickyTold(soak);
  if (telling.length === 0 && !clock) return flags.length > 0 ? onlySticky(flags, sticky) : noChannel('throttle flag or clock');
  if (!phase) return noPhase(soak, 'load');
  const told = telling.length > 0 ? byFlags(telling, phase) : byClock(soak, clock!, phase);
  if (isReason(told)) return told;
  const channels = [...new Set([...told.channels, ...flags.filter((channel) => channel.sticky !== undefined)])];
  return { ...told, channels, sticky, missed: missedIn(sticky, phase) };
}

/** Flags without a bit that means "now", and no clock beside them. */
function onlySticky(flags: readonly Channel[], sticky: readonly StickyTold[]): Reason {
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

/** The clock counts as throttled after two readings in a row below its setting, once it has been at it. */
function byClock(soak: Soak, clock: Channel, phase: Phase): Told | Reason {
  const threshold = thresholdOf(soak, clock);
  if (isReason(threshold)) return threshold;
  if (!hasReadings(clock, phase)) return noReadings(clock.name, 'the load phase');
  const loaded = loadedAt(soak);
  const onsets: Onset[] = [];
  let armed = false;
  let candidate = -1;
  for (let row = phase.fromRow; row < phase.toRow; row++) {
    const value = clock.values[row]!;
    if (Number.isNaN(value) || !loaded(row)) continue;
    if (value >= threshold.below) {
      armed = true;
      candidate = -1;
    } else if (candidate >= 0) {
      onsets.push({ row: candidate, reason: 'clock below its setting' });
      armed = false;
      candidate = -1;
    } else if (armed) candidate = row;
  }
  return {
    phase,
    channels: [clock],
    onsets,
    by: `the clock ${clock.name} itself, below its setting for two readings or more`,
    reasons: [],
  };
}
