/** One time axis for several runs: each begins where its load begins. */
import type { PlotSubject } from '../drawn.ts';
import type { Timed } from './trace-run.ts';

/** Seconds in the unit of a time axis. */
export interface TimeUnit {
  readonly unit: 's' | 'min' | 'h';
  readonly seconds: number;
}

export interface Alignment {
  /** By subject: seconds of its log at which the axis is 0. */
  readonly origins: readonly number[];
  /** True where the origin is the start of the load, false where it is the first row. */
  readonly atLoad: boolean;
  readonly time: TimeUnit;
  /** First and last moment of all runs, in the unit of the axis. */
  readonly from: number;
  readonly to: number;
}

/** A part of the time axis: from and to, s since its 0. */
export type Window = readonly [from: number, to: number];

/** Aligns runs at the start of their load phase; at their first rows where any of them has no row of such a phase. */
export function align(runs: readonly Timed[], window: Window | null = null): Alignment {
  const atLoad = runs.every(({ load }) => load !== null);
  const origins = runs.map(({ load }) => (atLoad ? load! : 0));
  const [from, to] = window ?? [
    Math.min(...runs.map(({ begin }, index) => begin - origins[index]!)),
    Math.max(...runs.map(({ end }, index) => end - origins[index]!)),
  ];
  const time = timeUnit(to - from);
  return { origins, atLoad, time, from: from / time.seconds, to: to / time.seconds };
}

/** s of its log at which a run's load begins; undefined where no row lies in such a phase. */
export function loadStart({ derived }: PlotSubject): number | undefined {
  return derived.phases.find(({ name, fromRow, toRow }) => name === 'load' && toRow > fromRow)?.from;
}

/** Minutes, as soaks are told; seconds below five minutes, hours beyond twelve hours. */
export function timeUnit(span: number): TimeUnit {
  if (span < 300) return { unit: 's', seconds: 1 };
  if (span > 43_200) return { unit: 'h', seconds: 3600 };
  return { unit: 'min', seconds: 60 };
}

/** Title of the time axis. */
export function timeTitle(alignment: Alignment): string {
  return `Time since ${alignment.atLoad ? 'load start' : 'the first row'} (${alignment.time.unit})`;
}
