/** `:stated[words]{is="expression"}`: keeps the author's words; an error where the data no longer bears them. */
import type { Nodes } from 'mdast';
import { printedStep, printQuantity } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { interval95 } from '../../quantities/uncertainty.ts';
import { toCanonical, unitFor } from '../../quantities/units.ts';
import type { Evaluated } from '../expression/evaluate.ts';
import { evaluate } from '../expression/expression.ts';
import { ownInterval } from '../expression/interval-margins.ts';
import { standInsText } from '../expression/stand-ins.ts';
import { locate } from '../expression/text-problem.ts';
import { correctedWords } from '../page/corrected-words.ts';
import { heldAnchor, type PageElement } from '../page/page-node.ts';
import { recordedInstead } from '../page/recorded-words.ts';
import { placeAt, report, spanOf, type Writing, warn } from '../page/writing.ts';
import { HEDGES } from '../stated/hedges.ts';
import { holds, type Verdict } from '../stated/holds.ts';
import { isUnread, readStated, type Stated } from '../stated/read.ts';
import { suggest } from '../stated/suggest.ts';
import { sensed } from './direction.ts';
import { wordsOf } from './directive-words.ts';
import type { WrittenDirective } from './read-directive.ts';
import { turnedRound } from './sentence-order.ts';
import { allowedWords, reportNarrow, reportStated, reportUnread, withUncertainty } from './stated-report.ts';
import { entryOf, holdsNothing, printed } from './value.ts';

/** The words as a link to what holds them, with what stood in for something that was not measured; or null after reporting what is wrong. Words that the data does not bear are an error, and are kept. */
export function stated(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const words = wordsOf(writing, read, node, 'a stated number');
  const is = read.attributes.find(({ name }) => name === 'is');
  if (words === null || !is) return null;
  const place = placeAt(writing, is.valueStart);
  const evaluated = evaluate(is.value, writing.subjects, place);
  if ('problems' in evaluated) {
    const asked = { kind: 'stated', text: labelOf(read).text, expression: is.value.trim() } as const;
    const said = recordedInstead(writing, asked, placeAt(writing, spanOf(node).start), evaluated.problems);
    if (said) return said;
    writing.problems.push(...evaluated.problems);
    return null;
  }
  if (evaluated.held.length === 0) {
    writing.problems.push(locate(holdsNothing({ start: 0, end: is.value.length }), place));
    return null;
  }
  const unit = read.attributes.find(({ name }) => name === 'unit')?.value;
  const saidBy = (text: string) => {
    const said = readStated(unit === undefined ? text : `${text} ${unit}`, evaluated.quantity.unit);
    return isUnread(said) ? said : sensed(said, is.value, writing.subjects);
  };
  const said = saidBy(words);
  if (isUnread(said)) {
    report(writing, reportUnread(words, said, evaluated.quantity, labelOf(read)));
    return null;
  }
  const found = { read, node, evaluated, expression: is.value.trim() };
  if (verdictOf(said, evaluated) === 'fails') {
    for (const corrected of correctedWords(writing, found.expression)) {
      const again = saidBy(corrected);
      if (!isUnread(again) && verdictOf(again, evaluated) !== 'fails')
        return kept(writing, { ...found, words: corrected, said: again });
    }
  }
  return kept(writing, { ...found, words, said });
}

interface Found {
  readonly read: WrittenDirective;
  readonly node: Nodes;
  readonly words: string;
  readonly said: Stated;
  readonly evaluated: Evaluated;
  readonly expression: string;
}

function kept(writing: Writing, { read, node, words, said, evaluated, expression }: Found): PageElement | null {
  const { quantity, held } = evaluated;
  const interval = ownInterval(evaluated);
  const verdict = verdictOf(said, evaluated);
  const start = spanOf(node).start;
  const span = { start, end: read.end };
  const instead = verdict === 'fails' ? wordingFor(said, evaluated) : undefined;
  if (verdict === 'fails') report(writing, { ...reportStated(said, quantity, interval, instead), ...span });
  if (verdict === 'holds narrowly') {
    const weight = shareOutside(said, interval ?? interval95(quantity));
    warn(writing, { ...reportNarrow(said, quantity, interval), weight, ...span });
  }
  if (verdict !== 'fails') reportTurned(writing, said, { read, node, evaluated, expression });
  const shown = printed(quantity, { interval });
  if ('refused' in shown) return null;
  const text = words + standInsText(held);
  const entry = entryOf('stated', placeAt(writing, start), labelOf(read).text, expression, { ...shown, shown: text }, held);
  const rests = restsOn(withUncertainty(shown.shown, shown.uncertainty), allowedWords(said, quantity.unit));
  const own = instead === undefined ? {} : { instead: withoutUnit(instead, read) };
  writing.drafts.push({ ...entry, verdict: verdict === 'fails' ? 'fails' : 'holds', rests, ...own });
  return heldAnchor(writing.drafts.length - 1, text);
}

/** Warns where the sentence says of two runs the opposite of what the expression gives. */
function reportTurned(writing: Writing, said: Stated, { read, node, evaluated, expression }: Omit<Found, 'words' | 'said'>): void {
  const { start } = spanOf(node);
  const words = said.said.text;
  const after = writing.source.slice(read.end).split(SENTENCE_END, 1)[0] as string;
  const before = writing.source.slice(0, start).split(SENTENCE_END).at(-1) as string;
  const sentence = { before: before + words.slice(0, said.start), after: words.slice(said.end) + after };
  const other = turnedRound(said, sentence, expression, evaluated.quantity.value, writing.subjects);
  if (other === undefined) return;
  warn(writing, {
    rule: 'stated-turned',
    found: `the sentence compares with ${other} and says "${words}", and \`${expression}\` gives the opposite`,
    expected: 'a sentence that compares the runs the way round that the data has them',
    remedy: 'change places of the two runs in the sentence, or turn its words of more and less',
    start,
    end: read.end,
  });
}

/** A sentence ends at its full stop, a paragraph at a blank line. */
const SENTENCE_END = /[.!?](?=["')\]*_]*\s)|\r?\n[ \t>]*\r?\n/;

/** Whether words hold for an evaluated expression, its 95 % interval being its own where it has one. `said` is in its unit. */
export function verdictOf(said: Stated, evaluated: Evaluated): Verdict {
  const { quantity } = evaluated;
  const verdict = holds(said, quantity.value, ownInterval(evaluated) ?? interval95(quantity));
  if (verdict === 'holds' || isLimited(said)) return verdict;
  const closeEnough = verdict === 'holds narrowly' && !closerThanPrinted(said, quantity);
  return closeEnough || isPrinted(said, quantity) ? 'holds' : verdict;
}

/** Words in the author's form that are true of an evaluated expression, for certain where any are. `said` is in its unit. */
export function wordingFor(said: Stated, evaluated: Evaluated): string | undefined {
  const { quantity } = evaluated;
  const { text, number, unit } = printQuantity(quantity);
  const fitting = unitFor(quantity.unit, unit === '' ? '1' : unit);
  const shown = Number(number.replace('−', '-').replace(/[^\d.e-]/g, ''));
  const value = isRefusal(fitting) ? quantity.value : toCanonical(shown, fitting);
  const printed = { value, step: printedStep(quantity).canonical, text: text.replaceAll('\u00a0', ' ') };
  const sense = said.sense === undefined ? {} : { sense: said.sense };
  return suggest(said, quantity.value, quantity.unit, {
    printed,
    verdict: (words) => verdictOf({ ...words, ...sense }, evaluated),
  });
}

/** Differences of decimals lose their last digits. */
const ROUNDING = 1e-9;

/** Hedges that set a limit or a side: with them the interval must not reach across. */
const LIMITS = new Set(HEDGES.map(({ name }) => name).filter((name) => !['about', 'nearly', 'as far as'].includes(name)));

/** Whether the words set a limit, or name two numbers. */
function isLimited({ said, hedge }: Stated): boolean {
  return said.sides.length > 1 || (hedge !== undefined && LIMITS.has(hedge));
}

/**
 * Whether the words say a number more closely than the page would print it. Digits that follow the uncertainty are what readers take
 * for as much as is known (JCGM 100:2008, 7.2.6), so that words which say no more need no wider interval.
 */
function closerThanPrinted({ lower, upper }: Stated, quantity: Quantity): boolean {
  return upper - lower < printedStep(quantity).canonical * (1 - ROUNDING);
}

/**
 * Whether a number, or one with "about" before it, is the very one that the page prints. It is then never wrong, also where a sensor in
 * steps of half a degree has 59.45 printed as 59.5.
 */
function isPrinted({ nominal, hedge, lower, upper }: Stated, quantity: Quantity): boolean {
  if (hedge !== undefined && hedge !== 'about') return false;
  const { number, unit } = printQuantity(quantity);
  const fitting = unitFor(quantity.unit, unit === '' ? '1' : unit);
  if (isRefusal(fitting)) return false;
  const shown = toCanonical(Number(number.replace('−', '-').replace(/[^\d.e-]/g, '')), fitting);
  const decimals = /\.(\d+)/.exec(number)?.[1]?.length ?? 0;
  const step = toCanonical(10 ** -decimals, fitting) - toCanonical(0, fitting);
  return upper - lower >= step * (1 - ROUNDING) && Math.abs(shown - nominal) <= ROUNDING * Math.abs(nominal);
}

/** How much of an interval lies outside what the words allow: 0 for none of it, 1 for all. */
function shareOutside({ lower, upper }: Stated, interval: readonly [number, number] | null): number {
  if (!interval) return 1;
  const [low, high] = interval;
  const inside = Math.min(high, upper) - Math.max(low, lower);
  return 1 - Math.max(0, inside) / (high - low);
}

/** A suggestion without the unit that the number borrows. */
function withoutUnit(wording: string, { attributes }: WrittenDirective): string {
  const unit = attributes.find(({ name }) => name === 'unit')?.value;
  return unit !== undefined && wording.endsWith(` ${unit}`) ? wording.slice(0, -unit.length - 1) : wording;
}

function labelOf({ label }: WrittenDirective): NonNullable<WrittenDirective['label']> {
  return label as NonNullable<WrittenDirective['label']>;
}

/** On what a stated number rests, in words. */
export function restsOn(data: string, allowed: string): string {
  return `the data says ${data}; the words allow ${allowed}`;
}

/** What the data says, of the words of `restsOn`. */
export function dataOf(rests: string): string {
  return /^the data says (.*); the words allow /s.exec(rests)?.[1] ?? rests;
}
