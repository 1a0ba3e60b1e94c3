/** The catalogue: all that belongs to each figure, in its definition. */
import { CLOCK } from './catalogue/clock.ts';
import { COMPARISON } from './catalogue/comparison.ts';
import { PHASES } from './catalogue/phases.ts';
import { POWER } from './catalogue/power.ts';
import { REPEATS } from './catalogue/repeats.ts';
import { SCORES } from './catalogue/scores.ts';
import { SOUND } from './catalogue/sound.ts';
import { STABILITY } from './catalogue/stability.ts';
import type { Description, FigureList, FigureSubject } from './catalogue/subject.ts';
import { SURFACE } from './catalogue/surface.ts';
import { THERMAL } from './catalogue/thermal.ts';

export type { FigureSubject } from './catalogue/subject.ts';

/** Every subject, in the order of all lists; one that is left out does not compile. */
const BY_SUBJECT = {
  phases: PHASES,
  thermal: THERMAL,
  clock: CLOCK,
  power: POWER,
  sound: SOUND,
  scores: SCORES,
  surface: SURFACE,
  stability: STABILITY,
  comparison: COMPARISON,
  repeats: REPEATS,
} as const satisfies Readonly<Record<FigureSubject, object>>;

/** The name of a figure of a subject: a key of the catalogue. */
type NameOf<S extends FigureSubject> = { [T in S]: keyof (typeof BY_SUBJECT)[T] }[S];

/** The name of a figure: a key of the catalogue. */
export type FigureName = NameOf<FigureSubject>;

export interface Definition extends Description {
  readonly name: FigureName;
  readonly subject: FigureSubject;
}

/** Every figure, in the order of all lists. */
export const CATALOGUE: readonly Definition[] = Object.values(BY_SUBJECT).flatMap((figures) =>
  Object.entries(figures).map(([name, described]) => ({ name: name as FigureName, ...described })),
);

/** The figures of a subject, in the order of the catalogue. */
export function figuresOf<S extends FigureSubject>(of: S): readonly NameOf<S>[] {
  return Object.keys(BY_SUBJECT[of]) as NameOf<S>[];
}

/** Figures that a list shows, in the order of the catalogue. */
export function figuresIn(list: FigureList): readonly FigureName[] {
  return CATALOGUE.filter(({ lists }) => lists.includes(list)).map(({ name }) => name);
}

const BY_NAME: ReadonlyMap<string, Definition> = new Map(CATALOGUE.map((definition) => [definition.name, definition]));

/** The definition of a figure by its name in the catalogue (not its address); undefined for an unknown one. */
export function definitionOf(name: string): Definition | undefined {
  return BY_NAME.get(name);
}
