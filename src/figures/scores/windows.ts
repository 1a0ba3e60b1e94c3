/** The time that each repeat of a test took, found in the run's log. */
import type { Reason } from '../absent.ts';
import { firstRowAfter, firstRowAt } from '../phases.ts';
import type { Rows, Soak } from '../soak.ts';
import type { Moment, Repeat, ScoredTest } from './score-table.ts';

export interface Window {
  /** Name of the repeat. */
  readonly repeat: string;
  /** Seconds since the log's first row. */
  readonly from: number;
  readonly to: number;
  readonly rows: Rows;
}

/**
 * The windows of a test's repeats that the log covers, by time, so that sums over them have the same bits in whatever order the table's
 * rows stand; the first reason where it covers none.
 */
export function windowsOf(soak: Soak, test: ScoredTest): readonly Window[] | Reason {
  const found = test.repeats.map((repeat) => windowOf(soak, repeat));
  const windows = found.filter((each): each is Window => 'rows' in each);
  if (windows.length > 0) return windows.sort((a, b) => a.from - b.from || a.to - b.to);
  return (found[0] as Reason | undefined) ?? unstated(test.title);
}

function windowOf(soak: Soak, repeat: Repeat): Window | Reason {
  if (!repeat.window) return unstated(`repeat ${repeat.name}`);
  const from = secondsOf(soak, repeat.window.start);
  const to = secondsOf(soak, repeat.window.end);
  if (typeof from !== 'number') return from;
  if (typeof to !== 'number') return to;
  const { seconds, step, gaps } = soak.log.time;
  const end = seconds[seconds.length - 1] ?? 0;
  const reach = step ?? 0;
  if (from < -reach || to > end + reach)
    return {
      absent: 'out-of-range',
      why: 'The log does not cover the time that the repeats took: they were done before or after it.',
    };
  const inGap = gaps.some(({ row, length }) => seconds[row]! > from && seconds[row]! - length < to);
  if (inGap) return { absent: 'no-readings', why: 'The log has a gap in the time that the repeats took.' };
  return { repeat: repeat.name, from, to, rows: { from: firstRowAt(seconds, from), to: firstRowAfter(seconds, to) } };
}

function unstated(what: string): Reason {
  return { absent: 'no-readings', why: `The table of scores does not say when ${what} started and ended.` };
}

function secondsOf(soak: Soak, moment: Moment): number | Reason {
  if (moment.kind === 'elapsed') return moment.seconds;
  if (moment.kind === 'local')
    return { absent: 'no-condition', why: 'The times of the scores state no offset from UTC, and the log declares no zone.' };
  const { start } = soak.log.time;
  if (start === null)
    return {
      absent: 'no-condition',
      why: 'The log tells no date and zone, so that the times of the scores cannot be found in it.',
    };
  return moment.epoch - start;
}
