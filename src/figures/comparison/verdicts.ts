/** What may be said of figures that are judged together. */
import type { Quantity } from '../../quantities/quantity.ts';
import { expandedUncertainty } from '../../quantities/uncertainty.ts';
import type { Figure } from '../figure.ts';
import type { Asked, Tested } from './tested.ts';
import { NOT_TOLD_APART, RUNS_DIFFER, RUNS_DO_NOT_DIFFER, TOLD_APART } from './verdict-words.ts';

/** Chance of a false verdict, for a family of figures together. */
export const FALSE_VERDICTS = 0.05;

/** A figure with all that was made of its question. */
export interface TestedWithVerdict extends Tested {
  /** How many figures were judged together with this one, itself among them; 0 where nothing was judged. */
  readonly family: number;
}

/**
 * Verdicts of all figures, family by family: one figure of all other settings is a family, and so is one figure over all tests. Within a
 * family the chance of even one false verdict is 5 % (S. Holm, Scandinavian Journal of Statistics 6, 1979, 65–70: the clearest of m
 * is held against 5 % ÷ m, the next against 5 % ÷ (m − 1), and so on).
 */
export function withVerdicts(all: readonly Tested[]): TestedWithVerdict[] {
  const families = Map.groupBy(all, familyOf);
  const excluded = new Set<Tested>();
  const sizes = new Map<Tested, number>();
  for (const [family, members] of families) {
    if (family === '') continue;
    for (const member of members) sizes.set(member, members.length);
    for (const member of clearOnes(members)) excluded.add(member);
  }
  return all.map((each) => {
    const family = sizes.get(each) ?? 0;
    return { ...each, figure: withVerdict(each, excluded.has(each), family), family };
  });
}

/** '' for what is in no family, because nothing may be concluded from it. */
function familyOf({ figure, asked }: Tested): string {
  if (!asked || withheld(asked) || expandedUncertainty(asked.quantity) === null) return '';
  return [figure.name, figure.of?.test === undefined ? 'all' : 'by test', asked.dof > 0 ? 'runs' : 'logs'].join(' ');
}

/** Holm's step-down: at each step all that the level of that step tells are told, until none is. */
function clearOnes(members: readonly Tested[]): Tested[] {
  const clear: Tested[] = [];
  let left = [...members];
  for (;;) {
    const level = 1 - FALSE_VERDICTS / left.length;
    const found = left.filter(({ asked }) => tells(asked!, level));
    if (found.length === 0 || left.length === 0) return clear;
    clear.push(...found);
    left = left.filter((each) => !found.includes(each));
  }
}

function tells({ quantity, neutral }: Asked, level: number): boolean {
  return Math.abs(quantity.value - neutral) > (expandedUncertainty(quantity, level) ?? Number.POSITIVE_INFINITY);
}

/** Why a figure gets no verdict, whatever its interval; null where it may have one. */
function withheld({ joins, standsIn, sensors, between, quantity }: Asked): string | null {
  if (joins && standsIn.length > 0) return `no verdict: ${[...new Set(standsIn)].join('; ')}`;
  const [a, b] = between ?? [];
  const strangers = a !== undefined && b !== undefined && (a.device !== b.device || a.specimen !== b.specimen);
  return sensors && strangers && quantity.repeatabilityOnly ? 'cannot be told' : null;
}

function withVerdict({ figure, asked }: Tested, clear: boolean, family: number): Figure {
  if (!asked) return figure;
  const verdict = withheld(asked) ?? (family === 0 ? 'cannot be told' : SAID[asked.kind](asked, clear, family));
  return { ...figure, of: { ...figure.of, verdict, ...(family > 1 ? { verdicts: family } : {}) } };
}

const SAID: Readonly<Record<Asked['kind'], (asked: Asked, clear: boolean, family: number) => string>> = {
  apart: ({ dof, quantity }, clear) => {
    if (dof > 0 || (isReadOff(quantity) && !clear)) return clear ? TOLD_APART : NOT_TOLD_APART;
    return clear ? RUNS_DIFFER : RUNS_DO_NOT_DIFFER;
  },
  share: ({ dof }, clear) => {
    if (dof > 0) return clear ? 'told from zero' : 'not told from zero';
    return clear ? 'told from zero in these runs' : 'not told from zero in these runs';
  },
  linear: linearVerdict,
};

/** Whether a display was read by hand for it. */
function isReadOff({ parts }: Quantity): boolean {
  return (parts ?? []).some(({ source }) => source.id.endsWith('/display'));
}

/** What the data excludes and what it does not, of performance that is proportional to the clock. */
function linearVerdict({ quantity, dof }: Asked, clear: boolean, family: number): string {
  const slower = quantity.value < 1;
  if (dof === 0) {
    if (!clear) return 'these runs do not exclude linear';
    return `these runs grow ${slower ? 'more slowly' : 'faster'} than the clock`;
  }
  if (clear) return `linear is excluded: it grows ${slower ? 'more slowly' : 'faster'} than the clock`;
  const [low, high] = endsOf(quantity, 1 - FALSE_VERDICTS / family);
  return `linear is not excluded; exponents below ${outward(low, Math.floor)} and above ${outward(high, Math.ceil)} are`;
}

function endsOf(quantity: Quantity, level: number): readonly [number, number] {
  const half = expandedUncertainty(quantity, level) ?? Number.POSITIVE_INFINITY;
  return [quantity.value - half, quantity.value + half];
}

/** To two decimals, away from 1: what is said to be excluded is. */
function outward(end: number, round: (value: number) => number): string {
  return (round(end * 100) / 100).toFixed(2);
}
