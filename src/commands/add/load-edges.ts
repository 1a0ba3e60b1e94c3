/** Where the load of a log begins and ends, before its run is written. */
import type { EdgeRows } from '../../figures/change-point.ts';
import { listed } from '../../figures/in-words.ts';
import { detectLoadEdge } from '../../figures/phases.ts';
import type { Inspection } from '../../intake/inspect.ts';
import type { Log } from '../../intake/log.ts';
import { read } from '../../intake/read.ts';
import type { LogBytes } from '../../intake/sheet/log-bytes.ts';
import type { Place } from '../../problem.ts';
import type { Matches } from './match.ts';
import { isComplete } from './run-file.ts';
import { durationWords } from './show.ts';

/** When the first load begins and ends and the log ends, s; null where the load lasts to the end. */
export interface Load {
  readonly from: number;
  readonly to: number | null;
  readonly end: number;
  readonly words: string;
}

/** The load's edges by the same method that `phases: auto` uses, on the columns whose unit is known; in words alone where the log does not tell them. */
export function loadOf(bytes: LogBytes, path: string, inspection: Inspection, matches: Matches): Load | string | null {
  const log = provisionalLog(bytes, path, inspection, matches);
  const edges = log && log.rows > 2 ? detectLoadEdge(log) : null;
  if (!log || !edges) return null;
  if (typeof edges === 'string') return edges;
  const { seconds } = log.time;
  const [{ startRow, endRow }, ...others] = edges.loads as readonly [EdgeRows, ...EdgeRows[]];
  const from = seconds[startRow]!;
  const to = endRow < log.rows ? seconds[endRow]! : null;
  const end = seconds[log.rows - 1]!;
  const until = to === null ? 'the end' : durationWords(to);
  return {
    from,
    to,
    end,
    words: `load: from ${durationWords(from)} to ${until}, by ${edges.method}, on ${edges.channel}${furtherWords(others, seconds)}`,
  };
}

/** Loads after the first are named, so that the author can declare them. */
function furtherWords(others: readonly EdgeRows[], seconds: Float64Array): string {
  if (others.length === 0) return '';
  const starts = others.map(({ startRow }) => durationWords(seconds[startRow]!));
  return `; ${others.length === 1 ? 'another load begins' : 'more loads begin'} at ${listed(starts)}`;
}

function provisionalLog(bytes: LogBytes, path: string, inspection: Inspection, matches: Matches): Log | null {
  const place: Place = { file: `data/${path}`, line: 1, column: 1 };
  const { time, problems } = inspection;
  if (!time) return null;
  const unit = problems.some(({ rule }) => rule === 'time-unit-missing') ? { format: 'elapsed' as const, unit: 's' } : {};
  const channels = matches.channels.filter(isComplete).map(({ name, quantity, column, inherited }) => ({
    name,
    quantity,
    column: column.column,
    place,
    ...(inherited?.unit === undefined ? {} : { unit: inherited.unit }),
  }));
  return read(bytes, { file: path, channels, repairs: [], place, time: { column: time.column, ...unit } }, place.file).log;
}
