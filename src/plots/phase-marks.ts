/** Phases in the drawing: shaded stretches, their borders, their names in rows above. */
import type { Alignment } from './align.ts';
import { dodge } from './dodge.ts';
import type { PlotSubject } from './drawn.ts';
import { type Band, inkOf, type Label, type Rule } from './marks.ts';
import type { Size } from './size.ts';
import { textWidth } from './text-width.ts';

/** A phase on the time axis. */
export interface Stretch {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** Names of phases stand in a row: one for all runs where their phases agree, else one for each run, in its colour. */
export interface PhaseRow {
  readonly stretches: readonly Stretch[];
  readonly fill: string;
}

/** Phases whose borders differ by less than this share of the axis are drawn as one. */
const AGREE = 0.01;

/** The rows of phase names of several runs. */
export function phaseRows(subjects: readonly PlotSubject[], alignment: Alignment): readonly PhaseRow[] {
  const all = subjects.map((subject, index) => stretchesOf(subject, alignment.origins[index]!, alignment));
  const tolerance = AGREE * (alignment.to - alignment.from);
  if (all.every((stretches) => agree(stretches, all[0]!, tolerance))) return rowOf(all[0]!, 'var(--plot-soft)');
  return all.flatMap((stretches, k) => rowOf(stretches, inkOf(k)));
}

function rowOf(stretches: readonly Stretch[], fill: string): PhaseRow[] {
  return stretches.length > 0 ? [{ stretches, fill }] : [];
}

function stretchesOf(subject: PlotSubject, origin: number, { time, from, to }: Alignment): Stretch[] {
  return subject.derived.phases.map((phase) => ({
    name: phase.name,
    from: Math.max((phase.from - origin) / time.seconds, from),
    to: Math.min((phase.to - origin) / time.seconds, to),
  }));
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
  return size.small + 5;
}

/** Names of the phases above the data area, each row centred on its stretches and moved apart where they are narrow. */
export function phaseLabels(rows: readonly PhaseRow[], xOf: (x: number) => number, width: number, size: Size): Label[] {
  return rows.flatMap(({ stretches, fill }, row) => {
    const sizes = stretches.map(({ name }) => textWidth(name, size.small) + 10);
    const wanted = stretches.map(({ from, to }) => (xOf(from) + xOf(to)) / 2);
    const y = -(rows.length - row - 0.5) * rowHeight(size);
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

/** Ticks at the borders of the phases, in each row. */
export function phaseBorders(rows: readonly PhaseRow[], xOf: (x: number) => number, size: Size): Rule[] {
  return rows.flatMap(({ stretches, fill }, row) => {
    const bottom = -(rows.length - row - 1) * rowHeight(size);
    const borders = new Set(stretches.flatMap(({ from, to }) => [xOf(from), xOf(to)]));
    return [...borders].map((x) => ({ x, x2: x, y: bottom - rowHeight(size) + 3, y2: bottom - 2, stroke: fill }));
  });
}
