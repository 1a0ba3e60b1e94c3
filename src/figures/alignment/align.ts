/** When the first row of each further log of a run stands on the run's clock, and how sure that is. */
import type { Log } from '../../intake/log.ts';
import { counted, plain } from '../in-words.ts';
import { type Shift, shiftByEdges } from './by-edges.ts';
import { edgesOf } from './edges.ts';

/**
 * What the author says of a log's clock: how much to add to it, when its first row stands after that of the first log, or that the loads which
 * both logs show bring them together.
 */
export type Offset =
  | {
      readonly by: 'offset' | 'start';
      readonly seconds: number;
      /** Standard uncertainty, s; 0 where none is stated. */
      readonly u: number;
      readonly distribution?: 'rectangular';
      /** As written. */
      readonly text: string;
    }
  | { readonly by: 'load edge' };

export interface ClockedLog {
  readonly name: string;
  readonly log: Log;
  readonly offset?: Offset;
}

export interface Alignment {
  readonly name: string;
  /** s since the first row of the first log. */
  readonly at: number;
  /** Standard uncertainty of `at`, s; 0 where nobody states one. */
  readonly u: number;
  readonly distribution?: 'rectangular';
  /** How it was told, for readers. */
  readonly statement: string;
  /** s by which the loads of both logs lie apart under it, where they do by more than they may. */
  readonly edgesApart?: number;
}

/** Why a log cannot be brought to the run's clock. */
export type Unaligned = 'clocks' | 'undated' | 'no-edges' | 'ambiguous' | 'apart';

/**
 * By the author's word first: an offset is added to the log's own instants, which both logs must tell; a start is when the log's first row
 * stands after the first log's. Without a word both clocks are taken as they are, where both tell date and zone.
 */
export function alignLog(first: ClockedLog, other: ClockedLog): Alignment | Unaligned {
  const { offset } = other;
  const between = instantsBetween(first.log, other.log);
  const found =
    offset?.by === 'load edge'
      ? byEdges(first, other)
      : offset
        ? byOffset(first, other, offset, between)
        : byClocks(first, other, between);
  if (typeof found === 'string') return found;
  const end = first.log.time.seconds[first.log.rows - 1] ?? 0;
  const last = found.at + (other.log.time.seconds[other.log.rows - 1] ?? 0);
  if (last < 0 || found.at > end) return 'apart';
  return found;
}

/** s from the first row of one log to that of the other by their own clocks; null where one does not tell the instant. */
function instantsBetween({ time: a }: Log, { time: b }: Log): number | null {
  return a.start === null || b.start === null ? null : b.start - a.start;
}

function byOffset(
  first: ClockedLog,
  { name, log }: ClockedLog,
  { by, seconds, u, distribution, text }: Exclude<Offset, { by: 'load edge' }>,
  between: number | null,
): Alignment | Unaligned {
  if (by === 'offset' && between === null) return 'undated';
  const at = by === 'start' ? seconds : seconds + (between ?? 0);
  const statement =
    by === 'start'
      ? `The first row of the log ${name} stands ${text} after that of ${first.name}, as stated.`
      : `${text} were added to the clock of the log ${name}, as stated.`;
  return { name, at, u, ...(distribution ? { distribution } : {}), statement, ...apartOf(first.log, log, at) };
}

function byClocks(first: ClockedLog, { name, log }: ClockedLog, between: number | null): Alignment | Unaligned {
  if (between === null) return 'clocks';
  const statement = `The clocks of the logs ${first.name} and ${name} are taken to agree: both tell date and zone, and nothing else is stated.`;
  return { name, at: between, u: 0, statement, ...apartOf(first.log, log, between) };
}

function byEdges(first: ClockedLog, { name, log }: ClockedLog): Alignment | Unaligned {
  const [own, others] = [edgesOf(first.log), edgesOf(log)];
  if (!own || !others) return 'no-edges';
  const shift = shiftByEdges(own.edges, others.edges);
  if (typeof shift === 'string') return shift === 'none' ? 'no-edges' : 'ambiguous';
  const { at, half } = centre(shift);
  const between = instantsBetween(first.log, log);
  const added = between === null ? '' : `: ${plain(at - between)} s were added to its clock`;
  const statement = `The log ${name} was brought to the clock of ${first.name} by ${counted(shift.agree, 'edge')} of the load, which ${others.channel} and ${own.channel} show${added}. Its first row stands at ${plain(at)} s, ± ${plain(half)} s.`;
  return { name, at, u: half / Math.sqrt(3), distribution: 'rectangular', statement };
}

/** The middle of the limits, anywhere between which the shift may lie (JCGM 100:2008, 4.3.7), to the millisecond. */
function centre({ from, to }: Shift): { readonly at: number; readonly half: number } {
  const at = Math.round(((from + to) / 2) * 1000) / 1000;
  return { at, half: Math.max(to - at, at - from) };
}

/** What stated clocks leave between the loads of both logs; nothing where these agree, or one of them shows none. */
function apartOf(first: Log, other: Log, at: number): Pick<Alignment, 'edgesApart'> {
  const [own, others] = [edgesOf(first), edgesOf(other)];
  const shift = own && others && shiftByEdges(own.edges, others.edges);
  if (!shift || typeof shift === 'string') return {};
  const off = at < shift.from ? at - shift.from : at > shift.to ? at - shift.to : 0;
  return Math.abs(off) > FREE ? { edgesApart: at - (shift.from + shift.to) / 2 } : {};
}

/** Loads show to a second or two where they begin: less says nothing against a clock, s. */
const FREE = 2;
