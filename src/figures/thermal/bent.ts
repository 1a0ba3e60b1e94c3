/** Whether a climbing temperature bent and settled otherwise than it began: what a fan does that steps in and stays on. */
import { riseBend } from '../../statistics/rise-bend.ts';
import type { Reason } from '../absent.ts';
import { duration, plain } from '../in-words.ts';
import { binsOf } from './bins.ts';
import type { LoadSeries } from './load-series.ts';

/** A bend early in a long load is looked for in a part of the load too. */
const WINDOWS = [1, 1 / 4];
/** Where nobody saw the load, a bend in this share of it may be the end of a boost, after which the response is one again. */
const BOOST_SHARE = 1 / 6;

/** Where the course bends. */
export interface Bend {
  /** s since the load began: surely before it, about it, and surely after it. */
  readonly from: number;
  readonly at: number;
  readonly to: number;
  /** Slope after it over the slope before it. */
  readonly slopes: number;
}

/** The bend of a course under load, or null. `step`: that of the sensor, K. Some 10 ms. */
export function bendOf(series: LoadSeries, step: number): Bend | null {
  for (const share of WINDOWS) {
    const { t, y } = binsOf(series, 0, share * series.lasted);
    const bend = riseBend(t, y, 0, step);
    if (!bend) continue;
    const { at, slopes } = bend;
    const spacing = (share * series.lasted) / t.length;
    return { from: at - spacing, at, to: at + 2 * spacing, slopes };
  }
  return null;
}

/**
 * Whether a bend ends what came before the response: a boost. `seen`: s since the load began, until which it was seen to change; null where no channel
 * shows what it was.
 */
export function endsBoost({ from }: Bend, { lasted }: LoadSeries, seen: number | null): boolean {
  return from <= (seen ?? BOOST_SHARE * lasted);
}

/** Why a course that bends is that of two devices, of two loads, or of two rooms. `isSeen`: whether a channel shows what the load was; `roomIsRead`: whether one shows the ambient. */
export function bentReason({ at, slopes }: Bend, { channel }: LoadSeries, isSeen: boolean, roomIsRead: boolean): Reason {
  const went = slopes < 0 ? 'fell' : `climbed ${plain(Number(slopes.toPrecision(1)))} times as fast`;
  const causes = [
    'A fan that steps in',
    ...(isSeen ? [] : ['a governor', 'a change of the load']),
    ...(roomIsRead ? [] : ['a room that cools']),
  ];
  const told = causes.length === 1 ? '' : ', and this figure does not tell which';
  const why = `The channel ${channel.name} bent after about ${duration(Number(at.toPrecision(2)))} of the load, from where on it ${went}: it is not the course of one load with one cooling. ${listed(causes)} can do that${told}.`;
  return { absent: 'load-changed', why };
}

function listed(causes: readonly string[]): string {
  return causes.length === 1 ? causes[0]! : `${causes.slice(0, -1).join(', ')} or ${causes[causes.length - 1]!}`;
}
