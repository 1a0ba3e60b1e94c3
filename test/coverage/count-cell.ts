/** Counts over the trials of one cell of a family. */
import type { FamilyRow } from '../../src/figures/checks/families.ts';
import { type Figure, isPresent, type PresentFigure } from '../../src/figures/figure.ts';
import { orRefused } from '../../src/figures/joined.ts';
import { subtract } from '../../src/quantities/arithmetic.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import { quantile } from '../../src/statistics/quantile.ts';
import { random } from '../simulator/random.ts';
import type { Answer, Cell, Saying } from './family.ts';
import { holds } from './holds.ts';

/** Rows of the table, one for each question, in the order of the first trial that asks it. */
export function countCell(family: string, cell: Cell, trials: number): readonly FamilyRow[] {
  const counts = new Map<string, Count>();
  for (let trial = 0; trial < trials; trial++) {
    const answers = simulated(family, cell, trial, 'first');
    for (const answer of answers) add(countOf(counts, answer.asked), answer);
    if (cell.pairs) addPairs(counts, answers, simulated(family, cell, trial, 'second'));
  }
  return [...counts].map(([asked, count]) => rowOf(cell, asked, count, trials));
}

function simulated(family: string, cell: Cell, trial: number, which: string): readonly (Answer | Saying)[] {
  const draw = (purpose: string) => random(seedOf(`${family}/${cell.name}/${trial}/${purpose}`));
  return cell.simulate({ setting: draw('setting'), noise: draw(`noise/${which}`), run: `${cell.name} ${trial} ${which}` });
}

/** A seed from a text, the same on every machine (FNV-1a, 32 bits; G. Fowler, L. C. Noll and P. Vo; from memory). */
function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash | 0;
}

interface Count {
  figure: string | null;
  unit: string | null;
  interval: boolean;
  present: number;
  held: number;
  halves: number[];
  ratios: number[];
  bounds: number;
  falseBounds: number;
  mustBeAbsent: boolean;
  absent: number;
  caused: number;
  pairs: number;
  apart: number;
  saying: Saying | null;
  said: number;
}

function countOf(counts: Map<string, Count>, asked: string): Count {
  const known = counts.get(asked);
  if (known) return known;
  const tally = { present: 0, held: 0, bounds: 0, falseBounds: 0, absent: 0, caused: 0, pairs: 0, apart: 0, said: 0 };
  const what = { figure: null, unit: null, interval: false, mustBeAbsent: false, saying: null };
  const count: Count = { ...tally, ...what, halves: [], ratios: [] };
  counts.set(asked, count);
  return count;
}

function add(count: Count, answer: Answer | Saying): void {
  if ('said' in answer) {
    count.saying = answer;
    if (answer.said) count.said++;
    return;
  }
  const { figure, truth, absent } = answer;
  if (figure) count.figure = figure.name;
  if (absent) addAbsence(count, figure, absent);
  else count.interval = true;
  if (!figure || truth === null) return;
  if (isPresent(figure)) addInterval(count, figure, truth, answer.known);
  else if (figure.bound) {
    const { relation, value } = figure.bound;
    count.bounds++;
    if (relation === '>' ? truth < value : truth > value) count.falseBounds++;
  }
}

function addAbsence(count: Count, figure: Figure | undefined, cause: RegExp): void {
  count.mustBeAbsent = true;
  if (figure && isPresent(figure)) return;
  count.absent++;
  if (figure && cause.test(figure.why)) count.caused++;
}

function addInterval(count: Count, figure: PresentFigure, truth: number, known: number | undefined): void {
  const [low, high] = figure.interval ?? interval95(figure.quantity)!;
  const half = (high - low) / 2;
  count.unit = figure.quantity.unit === '°C' ? 'K' : figure.quantity.unit;
  count.present++;
  if (holds(figure, truth)) count.held++;
  count.halves.push(half);
  if (known !== undefined && known > 0) count.ratios.push(half / known);
}

/** Two runs with one setting: where both have the figure, is zero outside the interval of their difference? */
function addPairs(counts: Map<string, Count>, first: readonly (Answer | Saying)[], second: readonly (Answer | Saying)[]): void {
  for (const a of first) {
    const b = second.find(({ asked }) => asked === a.asked);
    if (!b || 'said' in a || 'said' in b || !a.figure || !b.figure || !isPresent(a.figure) || !isPresent(b.figure)) continue;
    const difference = orRefused(subtract(a.figure.quantity, b.figure.quantity));
    if ('absent' in difference) throw new Error(`${a.asked}: ${difference.why}`);
    const [low, high] = interval95(difference)!;
    const count = countOf(counts, a.asked);
    count.pairs++;
    if (low > 0 || high < 0) count.apart++;
  }
}

function rowOf(cell: Cell, asked: string, count: Count, trials: number): FamilyRow {
  const { figure, unit, present, held, halves, ratios, bounds, falseBounds, absent, caused, pairs, apart, saying } = count;
  return {
    cell: cell.name,
    asked,
    figure,
    trials,
    ...(count.interval ? { present, held } : {}),
    ...(halves.length > 0 ? { half: rounded(quantile(halves, 0.5)), unit: unit! } : {}),
    ...(ratios.length > 0 ? { ratio: rounded(quantile(ratios, 0.5)) } : {}),
    ...(bounds > 0 ? { bounds, falseBounds } : {}),
    ...(count.mustBeAbsent ? { absent, caused } : {}),
    ...(pairs > 0 ? { pairs, apart } : {}),
    ...(saying ? { said: count.said, ...limitsOf(saying) } : {}),
    why: cell.beyond ?? cell.why ?? '',
    ...(cell.beyond ? { beyond: true } : {}),
  };
}

function limitsOf({ atLeast, atMost }: Saying): Pick<FamilyRow, 'atLeast' | 'atMost'> {
  return { ...(atLeast === undefined ? {} : { atLeast }), ...(atMost === undefined ? {} : { atMost }) };
}

/** Three digits tell how wide an interval is. */
function rounded(value: number): number {
  return Number(value.toPrecision(3));
}
