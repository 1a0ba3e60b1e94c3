/** Phases in the drawing: shaded stretches, their borders, their names in rows above. */
import type { Alignment } from '../lines/align.ts';
import type { Timed } from '../lines/trace-run.ts';
import type { Band, Label, Rule } from '../marks.ts';
import { inkOf } from '../palette.ts';
import type { Size } from '../size.ts';
import { textWidth } from '../text-width.ts';
import { dodge } from './dodge.ts';

/** A phase on the time axis. */
export interface Stretch {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** Names of phases stand in a row: one for the runs whose phases agree, one for each other run, in its colour. */
export interface PhaseRow {
  readonly stretches: readonly Stretch[];
  readonly fill: string;
}

/** Phases whose borders differ by less than this share of the axis are drawn as one. */
const AGREE = 0.01;

/** The rows of phase names of several runs, `styles` theirs. */
export function phaseRows(runs: readonly Timed[], alignment: Alignment, styles: readonly number[]): readonly PhaseRow[] {
  const all = runs.map((run, index) => stretchesOf(run, alignment.origins[index]!, alignment));
  const tolerance = AGREE * (alignment.to - alignment.from);
  const alike = (k: number) => all.filter((stretches) => agree(stretches, all[k]!, tolerance)).length;
  const shared = all.findIndex((_, k) => alike(k) > 1 || all.length === 1);
  const single = all.flatMap((stretches, k) =>
    shared >= 0 && agree(stretches, all[shared]!, tolerance) ? [] : rowOf(stretches, inkOf(styles[k]!)),
  );
  return shared < 0 ? single : [...rowOf(all[shared]!, 'var(--plot-soft)'), ...single];
}

function rowOf(stretches: readonly Stretch[], fill: string): PhaseRow[] {
  return stretches.length > 0 ? [{ stretches, fill }] : [];
}

function stretchesOf({ phases }: Timed, origin: number, { time, from, to }: Alignment): Stretch[] {
  const stretches = phases.map((phase) => ({
    name: phase.name,
    from: Math.max((phase.from - origin) / time.seconds, from),
    to: Math.min((phase.to - origin) / time.seconds, to),
  }));
  return stretches.filter((stretch) => stretch.from < stretch.to);
}

function agree(one: readonly Stretch[], other: readonly Stretch[], tolerance: number): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= tolerance;
  return (
    one.length === other.length &&
    one.every(
      (stretch, k) => stretch.name === other[k]!.name && near(stretch.from, other[k]!.from) && near(stretch.to, other[k]!.to),
    )
  );
}

/** Height of a row of phase names, px. */
export function rowHeight(size: Size): number {
  return size.small + 9;
}

/** Names of the phases above the data area, each row centred on its stretches and moved apart where they are narrow. */
export function phaseLabels(rows: readonly PhaseRow[], xOf: (x: number) => number, width: number, size: Size): Label[] {
  return rows.flatMap(({ stretches, fill }, row) => {
    const sizes = stretches.map(({ name }) => textWidth(name, size.small) + 10);
    const wanted = stretches.map(({ from, to }) => (xOf(from) + xOf(to)) / 2);
    const y = -(rows.length - row - 1) * rowHeight(size) - 5 - size.small * 0.6;
    return dodge(wanted, sizes, 0, width).map((x, k) => ({
      x,
      y,
      text: stretches[k]!.name,
      size: size.small,
      fill,
      align: 'center' as const,
    }));
  });
}

/** Shading of the load (of every other phase where none is so named), where all runs share their phases. */
export function phaseBands(rows: readonly PhaseRow[], xOf: (x: number) => number, height: number): Band[] {
  const [only, ...others] = rows;
  if (!only || others.length > 0) return [];
  const named = only.stretches.some(({ name }) => name === 'load');
  const shaded = only.stretches.filter(({ name }, k) => (named ? name === 'load' : k % 2 === 1));
  return shaded.map(({ from, to }) => ({ x: xOf(from), y: 0, x2: xOf(to), y2: height }));
}

/** A line under each name from the beginning of its phase to its end. */
export function phaseSpans(rows: readonly PhaseRow[], xOf: (x: number) => number, size: Size): Rule[] {
  return rows.flatMap(({ stretches, fill }, row) => {
    const y = -(rows.length - row - 1) * rowHeight(size) - 3.5;
    return stretches.map(({ from, to }) => ({ x: xOf(from) + 1, x2: xOf(to) - 1, y, y2: y, stroke: fill }));
  });
}
