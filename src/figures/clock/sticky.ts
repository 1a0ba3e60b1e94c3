/** What the sticky bits of the throttle flags tell: that something happened since the boot, and at best between which two readings. */
import type { Channel } from '../../intake/log.ts';
import type { Of } from '../absent.ts';
import type { Phase } from '../figure.ts';
import { duration } from '../in-words.ts';
import { channelsOf, type Soak } from '../soak.ts';
import { type Bit, nowBits, type StickyBit, stickyBits } from './bits.ts';

/** One thing that a sticky bit tells. */
export interface StickyEvent {
  readonly channel: string;
  /** "the sticky bit 18 (capped) came on between 2.5 min and 2.52 min of the log"; for readers. */
  readonly statement: string;
  /** Row at which it was first seen set, where it was seen to come on; the row before it is `before`. */
  readonly rose: { readonly row: number; readonly before: number } | null;
  readonly reason: string;
  /** True where it came on and no bit that means "now" was seen set since it was last on: what happened was shorter than the step of the log. */
  readonly missed: boolean;
}

/** All that the sticky bits of all flags tell, in declared order. */
export function stickyEvents(soak: Soak): readonly StickyEvent[] {
  return channelsOf(soak.log, 'throttle_flag').flatMap((channel) =>
    stickyBits(channel).flatMap((bit) => toldBy(soak, channel, bit)),
  );
}

function toldBy(soak: Soak, channel: Channel, bit: StickyBit): StickyEvent[] {
  const seen = soak.log.time.seconds;
  const told: StickyEvent[] = [];
  const name = `the sticky bit ${bit.number} (${bit.reason})`;
  let before = -1;
  for (let row = 0; row < channel.values.length; row++) {
    const word = channel.values[row]!;
    if (Number.isNaN(word)) continue;
    const [now, then] = [bit.isSet(word), before >= 0 && bit.isSet(channel.values[before]!)];
    const common = { channel: channel.name, reason: bit.reason };
    if (now && before < 0) {
      const statement = `${name} was set in the first reading already: it happened after the boot and before the log, at a time unknown`;
      told.push({ ...common, statement, rose: null, missed: false });
    } else if (now && !then) {
      const missed = !wasSeen(channel, bit, row);
      const when = `between ${duration(seen[before]!)} and ${duration(seen[row]!)} of the log`;
      const unseen = missed ? ', though no reading shows it: it was shorter than the time between two readings' : '';
      told.push({ ...common, statement: `${name} came on ${when}${unseen}`, rose: { row, before }, missed });
    } else if (!now && then) {
      const statement = `${name} went off at ${duration(seen[row]!)} of the log: the device was restarted, or its flags were cleared`;
      told.push({ ...common, statement, rose: null, missed: false });
    }
    before = row;
  }
  return told;
}

/**
 * Whether a "now" bit of the reason (any of the flag's, where none has that reason) was set in the reading of that row or in one before it,
 * back to the last with the sticky bit: what was seen before the flags were cleared is another event.
 */
function wasSeen(channel: Channel, sticky: StickyBit, row: number): boolean {
  const all = nowBits(channel);
  const alike = all.filter(({ reason }) => reason === sticky.reason);
  const bits: readonly Bit[] = alike.length > 0 ? alike : all;
  for (let at = row; at >= 0; at--) {
    const word = channel.values[at]!;
    if (Number.isNaN(word)) continue;
    if (at < row && sticky.isSet(word)) return false;
    if (bits.some(({ isSet }) => isSet(word))) return true;
  }
  return false;
}

/** Those that came on in the phase without a "now" bit: events that the log missed. */
export function missedIn(told: readonly StickyEvent[], phase: Pick<Phase, 'fromRow' | 'toRow'>): readonly StickyEvent[] {
  return told.filter(({ missed, rose }) => missed && rose !== null && rose.row >= phase.fromRow && rose.row < phase.toRow);
}

/** What a figure of throttling says of sticky bits, and of events that were missed; nothing without sticky bits that tell something. */
export function stickyWords(told: readonly StickyEvent[], missed: readonly StickyEvent[]): Of {
  return {
    ...(told.length > 0 ? { sticky: told.map(({ statement }) => statement).join('; ') } : {}),
    ...(missed.length > 0 ? { missed: missed.length } : {}),
  };
}
