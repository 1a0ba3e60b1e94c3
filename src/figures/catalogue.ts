/** The catalogue: every figure's name, label, unit, definition, source and the published check that it passes. */
import { CLOCK } from './catalogue/clock.ts';
import { COMPARISON } from './catalogue/comparison.ts';
import { PHASES } from './catalogue/phases.ts';
import { POWER } from './catalogue/power.ts';
import { REPEATS } from './catalogue/repeats.ts';
import { SCORES } from './catalogue/scores.ts';
import { STABILITY } from './catalogue/stability.ts';
import { SURFACE } from './catalogue/surface.ts';
import { THERMAL } from './catalogue/thermal.ts';

export const SUBJECTS = ['phases', 'thermal', 'clock', 'power', 'scores', 'surface', 'stability', 'comparison', 'repeats'] as const;
export type FigureSubject = (typeof SUBJECTS)[number];

export interface Definition {
  readonly name: string;
  /** In words: "peak temperature". */
  readonly label: string;
  readonly subject: FigureSubject;
  /** What it is, in words for readers. */
  readonly definition: string;
  /** TeX source. */
  readonly formula: string;
  /** Canonical unit. */
  readonly unit: string;
  readonly assumptions: readonly string[];
  readonly absentWhen: readonly string[];
  /** A citation, or the words "common practice, no source". */
  readonly source: string;
  /** What outside the project it was checked against. */
  readonly check: string;
}

export const CATALOGUE: readonly Definition[] = [
  ...PHASES,
  ...THERMAL,
  ...CLOCK,
  ...POWER,
  ...SCORES,
  ...SURFACE,
  ...STABILITY,
  ...COMPARISON,
  ...REPEATS,
];

const BY_NAME: ReadonlyMap<string, Definition> = new Map(CATALOGUE.map((definition) => [definition.name, definition]));

/** The definition of a figure by its name in the catalogue (not its address); undefined for an unknown one. */
export function definitionOf(name: string): Definition | undefined {
  return BY_NAME.get(name);
}
