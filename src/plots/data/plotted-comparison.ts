/** The figures of a comparison as its plots take them: derived just now, or read back from what was published. Free of Node. */
import { DIFFERS } from '../../figures/comparison/verdict-words.ts';
import { type Figure, type FigureMap, isPresent, type Known, nameIn, type PresentFigure } from '../../figures/figure.ts';
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import { interval95 } from '../../quantities/uncertainty.ts';
import type { Spread } from '../drawing/dots.ts';
import type { ComparedSubject } from '../drawing/drawn.ts';
import { runStyles } from '../drawing/styles.ts';

export interface ComparedRun {
  readonly alias: string;
  /** Style, from 0. */
  readonly k: number;
}

export interface PlottedComparison {
  readonly reference: ComparedRun;
  /** The other runs, in the author's order. */
  readonly others: readonly ComparedRun[];
  readonly figures: FigureMap;
}

/** Throws a RangeError where the reference is none of the runs. */
export function plottedComparison(subject: ComparedSubject): PlottedComparison {
  const styles = runStyles(subject.runs.map(({ slot }, index) => ({ slot: slot ?? index })));
  const runs = subject.runs.map(({ alias }, index) => ({ alias, k: styles[index]! }));
  const reference = runs.find(({ alias }) => alias === subject.reference);
  if (!reference) throw new RangeError(`the reference ${subject.reference} is none of the runs compared`);
  return { reference, others: runs.filter((run) => run !== reference), figures: subject.figures };
}

/** A figure, present or absent; one that the comparison does not have is absent too. */
export function figureAt<Address extends string>({ figures }: PlottedComparison, address: Address & Known<Address>): Figure {
  const written: string = address;
  return figures.get(written) ?? { name: nameIn(written), absent: 'operand-absent', why: 'The comparison has no such figure.' };
}

/** The 95 % interval of a figure; null where its uncertainty is unknown. */
export function intervalOf(figure: PresentFigure): readonly [number, number] | null {
  return figure.interval ?? interval95(figure.quantity);
}

/** Value and interval of the figures that are present. */
export function spreadsOf(figures: readonly Figure[]): Spread[] {
  return figures.filter(isPresent).map((figure) => ({ value: figure.quantity.value, interval: intervalOf(figure) }));
}

/** The same as natural logarithms; an end at or below zero lies far below. */
export function logSpreads(figures: readonly Figure[]): Spread[] {
  return spreadsOf(figures).map(({ value, interval }) => {
    const log = (end: number) => (end > 0 ? Math.log(end) : Math.log(value) - FAR_BELOW);
    return { value: Math.log(value), interval: interval && ([log(interval[0]), log(interval[1])] as const) };
  });
}
const FAR_BELOW = 10;

/** "1.075", or "absent". */
export function valueText(figure: Figure): string {
  return isPresent(figure) ? printQuantity(figure.quantity).text : 'absent';
}

/** "± 0.004 (95 %)", or what is known of it; '' for an exact figure and for an absent one. In `unit`, where one is given. */
export function uncertaintyText(figure: Figure, unit?: string): string {
  return isPresent(figure) ? printUncertainty(figure.quantity, { interval: figure.interval, unit }) : '';
}

/** "1.075 ± 0.004 (95 %)", or "absent". */
export function toldText(figure: Figure): string {
  return [valueText(figure), uncertaintyText(figure)].filter((text) => text !== '').join(' ');
}

/** "told apart", "not told apart", "cannot be told"; '' of an absent figure. */
export function verdictOf(figure: Figure): string {
  return isPresent(figure) ? String(figure.of?.verdict ?? '') : '';
}

/** Whether a figure differs for certain from that of the reference: a filled sign. `signsSay` tells what of. */
export function differs(figure: Figure): boolean {
  return DIFFERS.includes(verdictOf(figure));
}

/** What a filled sign is and what an open one, or nothing where all are filled and `openOnly`: of settings, or of two runs alone. */
export function signsSay(figures: readonly Figure[], reference: string, openOnly = false): string[] {
  const present = figures.filter(isPresent);
  if (openOnly && present.every(differs)) return [];
  const oneRun = present.some(({ of }) => of?.between_runs === 'unknown');
  if (!oneRun) return [`A filled sign is told apart from ${reference}, an open one is not.`];
  return [
    `A filled sign is a run that differs from ${reference}, an open one is not. Each setting was run once, so that nothing tells how two runs of one setting differ.`,
  ];
}

/** Value and ends of the interval for a CSV, and why they are absent: four cells. */
export function cellsOf(figure: Figure): readonly (string | number)[] {
  if (!isPresent(figure)) return ['', '', '', figure.why];
  const interval = intervalOf(figure);
  return [figure.quantity.value, interval?.[0] ?? '', interval?.[1] ?? '', ''];
}

/** "No point for slow and fast: The run slow has no mean_clock." one sentence for each reason. */
export function absences(what: string, found: readonly { readonly name: string; readonly figure: Figure }[]): string[] {
  const reasons = new Map<string, string[]>();
  for (const { name, figure } of found) {
    if (!isPresent(figure)) reasons.set(figure.why, [...(reasons.get(figure.why) ?? []), name]);
  }
  return [...reasons].map(([why, names]) => `No ${what} for ${[...new Set(names)].join(', ')}: ${why}`);
}

/** What whiskers are, and what they leave out; `cut`: some go on beyond the axis. */
export function intervalWords(figures: readonly Figure[], cut = false): string[] {
  const present = figures.filter(isPresent);
  const unknown = present.some((figure) => intervalOf(figure) === null);
  const repeated = present.some(({ quantity }) => quantity.repeatabilityOnly);
  const inferred = new Set(present.flatMap((figure) => figure.inferred ?? []));
  return [
    'Whiskers are 95 % intervals; one that is shorter than its sign lies behind it.',
    ...(cut ? ['One without a stroke at its end goes on beyond the axis.'] : []),
    ...(repeated ? ['Where a sensor states no accuracy they hold repeatability only.'] : []),
    ...(unknown ? ['A sign without whiskers has an unknown uncertainty.'] : []),
    ...inferred,
  ];
}
