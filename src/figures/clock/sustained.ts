/** What is left of the first minutes' clock at the end of the load. */

import type { Channel } from '../../intake/log.ts';
import { divide } from '../../quantities/arithmetic.ts';
import { absent, isReason, noPhase, type Reason, tooShort } from '../absent.ts';
import { type Measured, meanOf } from '../average.ts';
import { duration } from '../in-words.ts';
import { joinFrom, orRefused } from '../joined.ts';
import { firstRowAt } from '../phases.ts';
import { present } from '../present.ts';
import { addressOf, type Entry, phaseOf, type Soak } from '../soak.ts';

/** Mean over the last ten minutes ÷ mean over the first two; the load lasts twenty minutes or more. */
const FIRST = 120;
const LAST = 600;
const NEEDED = 1200;

export function sustainedRatio(soak: Soak, channel: Channel, index: number): Entry {
  const address = addressOf('sustained_ratio', channel, index);
  const ratio = ratioOf(soak, channel, address);
  return [address, isReason(ratio) ? absent('sustained_ratio', ratio) : present('sustained_ratio', soak, ratio)];
}

function ratioOf(soak: Soak, channel: Channel, address: string): Measured | Reason {
  const phase = phaseOf(soak, 'load');
  if (!phase) return noPhase(soak, 'load');
  const { seconds } = soak.log.time;
  const end = seconds[phase.toRow - 1] ?? phase.from;
  const lasted = end - phase.from;
  if (lasted < NEEDED * (1 - 1e-3))
    return tooShort(
      `The load lasted ${duration(lasted)}; first and last minutes are told apart from ${duration(NEEDED)} on.`,
      NEEDED,
    );
  const first = meanOf(soak, channel, { from: phase.fromRow, to: firstRowAt(seconds, phase.from + FIRST) }, `${address}.first`);
  const last = meanOf(soak, channel, { from: firstRowAt(seconds, end - LAST), to: phase.toRow }, `${address}.last`, {
    words: 'the last ten minutes of the load',
  });
  if (isReason(first)) return first;
  if (isReason(last)) return last;
  const quantity = orRefused(divide(last.quantity, first.quantity));
  if (isReason(quantity)) return quantity;
  const of = { ...last.of, averaging: `last ${duration(LAST)} over first ${duration(FIRST)} of the load` };
  return { quantity, from: joinFrom(first.from, last.from), of };
}
