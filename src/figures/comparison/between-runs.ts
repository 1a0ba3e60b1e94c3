/**
 * How far runs of one setting lie apart, pooled over all settings of a comparison, as named sources. A run's deviation from the mean of
 * its setting is one source for all figures of the run, so that what goes together from run to run (a warmer day: more power, a lower
 * score) goes together in what is computed from them.
 */
import { sumSorted } from '../../quantities/combine.ts';
import type { Part } from '../../quantities/quantity.ts';
import { fTail } from '../../statistics/f-tail.ts';
import { isPresent, type PresentFigure } from '../figure.ts';
import { type ComparedRun, evenMean } from './compared.ts';

/**
 * Chance with which settings that repeat equally well are taken for unequal ones. It costs little width where they do (simulated: 1 % to 8 %), and
 * a lower one misses most settings that lie five times as far apart as the others.
 */
const UNEQUAL = 0.1;
/** Units in which runs lie apart by so and so much; in all others, by a share of the value. */
const BY_AMOUNT: readonly string[] = ['°C', 'K'];

/** Runs alike but for time. */
export interface Alike {
  /** Of the setting; '' of other repeats of the specimen. */
  readonly alias: string;
  readonly runs: readonly ComparedRun[];
}

/** The spread between runs of one figure. */
export interface BetweenRuns {
  /** 0: no setting has two runs with the figure. */
  readonly dof: number;
  /** What it adds to the mean of so many runs of a setting, in the figure's unit, in the place of their own scatter. */
  readonly partsOf: (alias: string, value: number, runs: number) => readonly Part[];
}

interface Group {
  readonly alias: string;
  /** Of each run that has the figure: its place among all runs of the comparison, and how far it lies from the mean. */
  readonly deviations: readonly { readonly place: number; readonly by: number }[];
  readonly dof: number;
  /** Sum of the squared deviations. */
  readonly squares: number;
  /** Mean variance that the runs state of their own scatter. */
  readonly own: number;
}

/**
 * The spread between runs of the figure at an address: analysis of variance over all groups, s² = Σ(x − x̄)² ÷ Σ(n − 1) (JCGM 100:2008,
 * H.5; ISO 5725-2 calls it repeatability where time, operator and set-up do not change). Temperatures and their differences deviate by
 * kelvins, all else by a share of the value (pooled logarithms, to first order). Where the spread of two settings differs
 * (F test of the largest against the smallest, at 10 % for all pairs together), each keeps its own (Welch), and a setting with one run
 * gets the largest. A setting that was run less often than one that it is compared with keeps its own spread wherever that is larger than the pooled one: the
 * others would outvote it, and what is pooled misses most where the fewer runs are those that lie further apart (H. Scheffé, The Analysis
 * of Variance, 1959, 10.2, from memory).
 */
export function betweenRuns(comparison: string, address: string, alike: readonly Alike[]): BetweenRuns {
  const scale = scaleOf(alike, address);
  const groups = groupsOf(alike, address, scale);
  const repeated = groups.filter(({ dof }) => dof > 0);
  const dof = sumOf(repeated, (group) => group.dof);
  if (dof === 0) return { dof, partsOf: () => [] };
  const owns = groups.filter(({ alias }) => alias !== '').map(({ own }) => own);
  const own = owns.length > 0 ? evenMean(owns) : 0;
  const everyRun = sumOf(alike, ({ runs }) => runs.length);
  const had = sumOf(groups, ({ deviations }) => deviations.length);
  const root = `comparison:${comparison}/between-runs${had < everyRun ? `-of-${had}` : ''}`;
  const amount = (value: number) => (scale === 'share' ? Math.abs(value) : 1);
  const first = (alias: string) => alike.findIndex((each) => each.alias === alias) * everyRun;
  const parts = (name: string, among: readonly Group[], least: number): BetweenRuns['partsOf'] => {
    const found = partsFrom(name, address, among, least);
    return (alias, value, runs) => found(amount(value) / Math.sqrt(runs), first(alias));
  };
  const pooled = parts(root, repeated, own);
  const alone = new Map(
    repeated.map((group) => [group, parts(`${root}/${group.alias || 'repeats'}`, [group], group.own)] as const),
  );
  const widest = repeated.reduce(further);
  const groupOf = (alias: string) => repeated.find((group) => group.alias === alias);
  const partsOf = unequal(repeated, own)
    ? (alias: string) => alone.get(groupOf(alias) ?? widest)!
    : (alias: string) => (isOutvoted(alias, alike[0]!.alias, repeated) ? alone.get(groupOf(alias)!)! : pooled);
  return { dof, partsOf: (alias, value, runs) => partsOf(alias)(alias, value, runs) };
}

/** Of two groups, that whose runs lie further apart. */
function further(one: Group, other: Group): Group {
  return other.squares / other.dof > one.squares / one.dof ? other : one;
}

/** Whether a setting was run less often than one that it is compared with, and its runs lie further apart than all do: others are compared with the reference. */
function isOutvoted(alias: string, reference: string, repeated: readonly Group[]): boolean {
  const settings = repeated.filter((group) => group.alias !== '');
  const group = settings.find((each) => each.alias === alias);
  const rivals = settings.filter((each) => alias === reference || each.alias === reference);
  if (!group || rivals.every(({ dof }) => dof <= group.dof)) return false;
  return group.squares / group.dof > sumOf(repeated, ({ squares }) => squares) / sumOf(repeated, ({ dof }) => dof);
}

/** Variance that a run's own sources give its figure, leaving out what other runs share: instruments, stated limits. */
function ownVariance({ quantity }: PresentFigure, run: string): number {
  return (quantity.parts ?? []).reduce((sum, { source, share }) => (isOwn(source.id, run) ? sum + share * share : sum), 0);
}

/** Whether a source belongs to one run. */
export function isOwn(source: string, run: string): boolean {
  return source.startsWith(`run:${run}/`);
}

function scaleOf(alike: readonly Alike[], address: string): 'share' | 'amount' {
  const figures = alike.flatMap(({ runs }) => runs.flatMap((run) => presentAt(run, address)?.quantity ?? []));
  return figures.every(({ value, unit }) => value > 0 && !BY_AMOUNT.includes(unit)) ? 'share' : 'amount';
}

function groupsOf(alike: readonly Alike[], address: string, scale: 'share' | 'amount'): Group[] {
  let place = 0;
  return alike.flatMap(({ alias, runs }) => {
    const had = runs.flatMap((run) => {
      const figure = presentAt(run, address);
      place++;
      return figure ? [{ place, run: run.run, figure }] : [];
    });
    if (had.length === 0) return [];
    const centre = evenMean(had.map(({ figure }) => figure.quantity.value));
    const one = scale === 'share' ? centre : 1;
    const deviations = had.map((each) => ({ place: each.place, by: (each.figure.quantity.value - centre) / one }));
    const own = evenMean(had.map(({ figure, run }) => ownVariance(figure, run))) / (one * one);
    const squares = sumSorted(deviations.map(({ by }) => by * by));
    return [{ alias, deviations, dof: had.length - 1, squares, own }];
  });
}

/**
 * One source for each deviation, whose shares add up to s². Each setting has sources of its own, since its runs are its own; all end in
 * a number, so that the degrees of freedom of the one estimate count once. Where the runs happen to lie closer together than their own
 * scatter lets expect (a variance of `least`), that is taken, with no more degrees of freedom: two runs that agree are no proof.
 */
function partsFrom(
  root: string,
  address: string,
  groups: readonly Group[],
  least: number,
): (factor: number, first: number) => Part[] {
  const deviations = groups.flatMap((group) => group.deviations);
  const dof = sumOf(groups, (group) => group.dof);
  const part = (id: string, share: number): Part => ({ source: { id, title: 'spread between runs of one setting', dof }, share });
  if (sumOf(groups, ({ squares }) => squares) / dof < least)
    return (factor, first) => [part(`${root}/${address}/${first + 1}`, factor * Math.sqrt(least))];
  return (factor, first) => deviations.map(({ place, by }) => part(`${root}/${first + place}`, (factor * by) / Math.sqrt(dof)));
}

/** A spread counts as no smaller than the scatter within the runs explains. */
function unequal(groups: readonly Group[], own: number): boolean {
  if (groups.length < 2) return false;
  const variance = (group: Group) => Math.max(group.squares / group.dof, own);
  const [largest, smallest] = [
    groups.reduce((most, group) => (variance(group) > variance(most) ? group : most)),
    groups.reduce((least, group) => (variance(group) < variance(least) ? group : least)),
  ];
  if (variance(largest) === variance(smallest)) return false;
  const pairs = groups.length * (groups.length - 1);
  return pairs * fTail(variance(largest) / variance(smallest), largest.dof, smallest.dof) < UNEQUAL;
}

function presentAt({ figures }: ComparedRun, address: string): PresentFigure | null {
  const figure = figures.get(address);
  return figure && isPresent(figure) ? figure : null;
}

function sumOf<T>(list: readonly T[], number: (each: T) => number): number {
  return sumSorted(list.map(number).concat(0));
}
