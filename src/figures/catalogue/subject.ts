/** What is written of a figure in the catalogue, and the subjects that figures are of. */

export const SUBJECTS = [
  'phases',
  'thermal',
  'clock',
  'power',
  'sound',
  'scores',
  'surface',
  'stability',
  'comparison',
  'repeats',
] as const;
export type FigureSubject = (typeof SUBJECTS)[number];

/**
 * A list that shows a figure besides its run's page and the method page: the index of runs and the pages of devices; runs side by side,
 * as it is or that of the load phase (`energy.load`); what is compared between runs that are alike.
 */
export type FigureList = 'runs' | 'side by side' | 'side by side, under load' | 'repeats';

/** All that belongs to a figure but its function. Its name is the key that it stands under. */
export interface Description {
  /** In words: "peak temperature". */
  readonly label: string;
  /** Canonical unit. */
  readonly unit: string;
  /** Words that people use around its number, besides those of its name and label: beginnings of words in lower case, with blanks between. */
  readonly spoken: string;
  /** How ready people are to mean it where nothing else decides: above 0 what write-ups are about; 0 where it is left out. */
  readonly prior?: number;
  /** Ids of the checks against published values that prove what it rests on (`../checks`). */
  readonly publishedChecks: readonly string[];
  readonly lists: readonly FigureList[];
  /** Why its intervals hold the truth more or less often than 93 to 97 %, for readers; left out where they do not. */
  readonly outside?: string;
  /** Why there is no simulation of its interval; left out where there is one. */
  readonly uncounted?: string;
  /** What it is, in words for readers. */
  readonly definition: string;
  /** TeX source. */
  readonly formula: string;
  readonly assumptions: readonly string[];
  /** What its value and interval do not cover, for readers: at least one thing, or it does not compile. */
  readonly notCovered: readonly [string, ...string[]];
  readonly absentWhen: readonly string[];
  /** It rests on single readings, or on their order: absent where a long log has neighbours taken as one. */
  readonly ofSingleReadings?: true;
  /** A citation, or the words "common practice, no source". */
  readonly source: string;
  /** What outside the project it was checked against, in words. */
  readonly check: string;
}

/** The figures of one subject, in the order in which they stand in every list. */
export function subject<const N extends string>(
  of: FigureSubject,
  figures: Readonly<Record<N, Description>>,
): Readonly<Record<N, Description & { readonly subject: FigureSubject }>> {
  const entries = Object.entries<Description>(figures).map(([name, description]) => [name, { ...description, subject: of }]);
  return Object.fromEntries(entries);
}
