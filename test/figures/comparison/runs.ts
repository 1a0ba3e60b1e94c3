/** Runs as a comparison sees them, made of plain numbers. */
import { compare } from '../../../src/figures/comparison/compare.ts';
import { alone, type ComparedRun } from '../../../src/figures/comparison/compared.ts';
import type { AbsentFigure, Figure, NameOfFigure, PresentFigure } from '../../../src/figures/figure.ts';
import type { Part, Quantity } from '../../../src/quantities/quantity.ts';

export interface Sketch {
  /** By test: the value, or value and standard uncertainty with its degrees of freedom; null = without a result. */
  readonly scores?: Readonly<Record<string, number | readonly [value: number, u: number, dof: number | null] | null>>;
  readonly better?: 'higher' | 'lower';
  readonly unit?: string;
  /** Hz, exact. */
  readonly clock?: number;
  readonly setting?: number;
  readonly specimen?: string;
  readonly more?: Readonly<Record<string, Figure>>;
}

export function figure(name: NameOfFigure, quantity: Quantity, of: Figure['of'] = {}): PresentFigure {
  return { name, quantity, of, from: { columns: [name], rows: null } };
}

export function part(id: string, share: number, dof: number | null = null): Part {
  return { source: { id, title: id, dof }, share };
}

export function runOf(alias: string, sketch: Sketch): ComparedRun {
  const { better = 'higher', unit = 'points', clock, setting, specimen = 'no-1', scores = {}, more = {} } = sketch;
  const scored = Object.entries(scores).map(([test, value]): [string, Figure] => {
    const key = `score.${test}`;
    const of = { test, title: test, better };
    if (value === null) return [key, { name: 'score', absent: 'no-readings', why: `No repeat of ${test} gave a result.`, of }];
    const [mean, u, dof] = typeof value === 'number' ? [value, 0, null] : value;
    const parts = u === 0 ? [] : [part(`run:${alias}/${key}/sampling`, u, dof)];
    return [key, figure('score', { value: mean, unit, parts }, of)];
  });
  const clocks: [string, Figure][] =
    clock === undefined ? [] : [['mean_clock', figure('mean_clock', { value: clock, unit: 'Hz', parts: [] })]];
  return {
    alias,
    run: `r-${alias}`,
    device: 'larch',
    specimen,
    ...(setting === undefined ? {} : { clockSetting: setting }),
    figures: new Map([...scored, ...clocks, ...Object.entries(more)]),
  };
}

/** Compares; the first run is the reference. */
export function compareRuns(runs: Readonly<Record<string, Sketch>>): ReadonlyMap<string, Figure> {
  const [reference, ...others] = Object.entries(runs).map(([alias, sketch]) => runOf(alias, sketch));
  return compare({ id: 'steps', reference: alone(reference!), others: others.map(alone) });
}

export function absentAt(figures: ReadonlyMap<string, Figure>, address: string): AbsentFigure {
  const found = figures.get(address);
  if (!found || !('absent' in found)) throw new Error(`${address} is not absent: ${JSON.stringify(found)}`);
  return found;
}
