/** Numbers that stand in the prose, that data could hold and that nothing holds: for the rule, and for the command that holds them. */
import type { Root } from 'mdast';
import { readUnit } from '../../quantities/units.ts';
import type { Span } from '../expression/expression-tree.ts';
import { heldTexts } from '../page/held-spans.ts';
import { numberSpans } from '../page/number-spans.ts';
import type { UnitSaid } from '../stated/phrase.ts';
import { findStated, isUnread, type Stated, type Unread } from '../stated/read.ts';
import { unread } from '../stated/stated-number.ts';
import { besideNumber, gluedIn, HAPPENED, unitBehind } from './beside-number.ts';
import { announced, borrows, borrowsAhead, ENDS, givenUnit, isLoneDecimal, type Named, runBefore } from './borrowed-unit.ts';
import { headUnits } from './head-units.ts';
import { otherAmounts } from './other-amounts.ts';
import { ranksIn } from './ranks.ts';

export interface UnheldNumber extends Span {
  /** As it stands in the source, hedge and comparison included. */
  readonly source: string;
  /** What it says, or why that cannot be read; its offsets are into the stretch of prose and mean nothing here. */
  readonly said: Stated | Unread;
  /** Within the words of a link, where no directive can stand. */
  readonly linked: boolean;
  /** The unit of a number that stands without it: "1.7" of "1.7, 1.9 and 2.3 GHz". */
  readonly unit?: string;
  /** A rank, which a claim holds. */
  readonly rank?: true;
}

/** Units of this trade's figures; others (an inch, a bit) are no measured number here. */
const MEASURED = new Set(['°C', 'K', 's', 'Hz', 'A', 'V', 'W', 'J', '1', 'K/W', 'K/s', 'rpm', 'A·s', 'V/A', 'dB']);

/** What a note's own subjects tell of the words around a number. */
export interface OwnWords extends Named {
  /** The units of their scores. */
  readonly units: ReadonlySet<string>;
}

const NO_WORDS: OwnWords = { units: new Set(), runs: new Set(), titles: [] };

/** All of a tree, in the order of the source. `shown` says what a `:value` with some label prints, and undefined where that is not known. */
export function findUnheld(
  source: string,
  tree: Root,
  words: OwnWords = NO_WORDS,
  shown: (label: string) => string | undefined = () => undefined,
): UnheldNumber[] {
  const alone = findAlone(source, tree, words);
  const beside = heldTexts(source, tree, shown).flatMap(({ start, text, held }) =>
    numbersIn(masked(text), words).flatMap(({ said, unit, ...at }): UnheldNumber[] => {
      const place = { start: start + at.start, end: start + at.end };
      if (unit === undefined || held.some((other) => meet(place, other))) return [];
      return [{ ...place, said, source: source.slice(place.start, place.end), linked: false, unit }];
    }),
  );
  // A bare decimal is found alone, and takes the unit that it borrows in the whole paragraph.
  const without = alone.filter((each) => !beside.some((other) => each.unit === undefined && isSame(each, other)));
  const more = beside.filter((each) => !without.some((other) => meet(each, other)));
  return [...without, ...more].sort((one, other) => one.start - other.start);
}

function isSame(a: Span, b: Span): boolean {
  return a.start === b.start && a.end === b.end;
}

/** Those of each stretch of prose by itself. A number whose unit stands in a directive beside it is found in the whole paragraph alone. */
function findAlone(source: string, tree: Root, words: OwnWords): UnheldNumber[] {
  const heads = headUnits(source, tree, (word) => isUnitWord(word, words.units));
  return numberSpans(tree).flatMap((span) => {
    const prose = masked(source.slice(span.start, span.end));
    const place = ({ start, end }: Span) => ({ start: span.start + start, end: span.start + end });
    const below = heads.get(span.start);
    const cell = below === undefined ? undefined : aloneInCell(prose, below);
    return (cell ?? numbersIn(prose, words)).map(({ said, unit, rank, ...at }) => {
      const { start, end } = place(at);
      const more = { ...(unit === undefined ? {} : { unit }), ...(rank ? { rank } : {}) };
      return { start, end, said, source: source.slice(start, end), linked: span.linked, ...more };
    });
  });
}

/** Entities and marks of Markdown as blanks of the same length, so that `**71** degrees` and `71&nbsp;°C` are read and offsets stay. */
function masked(prose: string): string {
  return prose.replace(/&(?:nbsp|thinsp|#\d+);|[*_`]+|~~|\\(?=[!-/:-@[-`{-~])|^[ \t]*>+/gm, (mark) => ' '.repeat(mark.length));
}

/** Whether a word of a table's head is a unit that numbers below it borrow. */
function isUnitWord(word: string, own: ReadonlySet<string>): boolean {
  const [said] = findStated(`2 ${word}`);
  if (said && !isUnread(said) && said.end === word.length + 2 && counts(`2 ${word}`, said)) return true;
  return unitBehind(` ${word}`, own)?.trim() === word;
}

/** The number of a cell that holds nothing else, with the unit of its column's head; undefined for other cells. */
function aloneInCell(prose: string, unit: string): Found[] | undefined {
  const [said, more] = findStated(prose);
  if (!said || more || isUnread(said) || hasUnit(said)) return undefined;
  const around = prose.slice(0, said.start) + prose.slice(said.end);
  return /^[\s|]*$/.test(around) ? [{ start: said.start, end: said.end, said, unit }] : undefined;
}

interface Found extends Span {
  readonly said: Stated | Unread;
  readonly rank?: true;
  /** The unit that it borrows. */
  readonly unit?: string;
}

/** A number of the prose, with the unit that those before it in a list share. */
interface Listed {
  readonly said: Stated | Unread;
  readonly found?: Found;
  readonly shared?: string;
}

function numbersIn(prose: string, words: OwnWords): Found[] {
  const own = words.units;
  const all = findStated(prose).map((said) => contrasted(prose, said) ?? said);
  const listed = all.map((said, index): Listed => listedOf(prose, said, own, startsAt(all[index + 1])));
  const found = inOrder(prose, listed, words);
  const ranks = ranksIn(prose).map((span): Found => ({ ...span, said: unread('a rank', span.start, RANKED), rank: true }));
  const amounts = otherAmounts(prose, (word) => isUnitWord(word, own)).map(
    ({ what, expected, ...span }): Found => ({ ...span, said: unread(what, span.start, expected) }),
  );
  const glued = gluedIn(prose, own).flatMap((span): Found[] => {
    const said = findStated(prose.slice(span.start, span.number))[0];
    return said && !isUnread(said) ? [{ start: span.start, end: span.end, said }] : [];
  });
  const numbers = found.filter((each) => !amounts.some((other) => meet(each, other)));
  const others = [...ranks, ...glued].filter((each) => ![...numbers, ...amounts].some((other) => meet(each, other)));
  return [...numbers, ...amounts, ...others].sort((a, b) => a.start - b.start);
}

/** Numbers with their units; one without a unit may have that of the number before it, or of words before a colon. */
function inOrder(prose: string, listed: readonly Listed[], words: OwnWords): Found[] {
  const { units } = words;
  const all: Found[] = [];
  const without = listed.flatMap(({ said, found }) => (isUnread(said) || found || hasUnit(said) ? [] : [said]));
  const bare = without.map(({ start }) => start);
  const ofRuns = valuesOfRuns(prose, without, words);
  let last: { readonly unit: string; readonly end: number } | undefined;
  let decimal: number | undefined;
  for (const [index, { said: whole, shared }] of listed.entries()) {
    const [found] = foundIn(prose, listed, index);
    // "50.4 s, not 54.5": the number itself, without what keeps it from being read.
    const said = isUnread(whole) && !found ? (bareInside(prose, whole) ?? whole) : whole;
    const unit = found
      ? (found.unit ?? shared)
      : (unitElsewhere(prose, said, { last, bare, own: units }) ?? unitAhead(prose, said, listed[index + 1]));
    if (found) {
      all.push(found);
      if (!isUnread(said) && unit === undefined && isRatio(said)) decimal = found.end;
    } else if (!isUnread(said) && (unit !== undefined || isBareDecimal(prose, said, decimal))) {
      all.push({ start: said.start, end: said.end, said, ...(unit === undefined ? {} : { unit }) });
      if (unit === undefined) decimal = said.end;
    } else if (!isUnread(said) && ofRuns.includes(said)) {
      all.push({ start: said.start, end: said.end, said: unread('a number without a unit', said.start, UNIT_MISSING) });
    }
    if (unit !== undefined && !isUnread(said)) last = { unit, end: found?.end ?? said.end };
  }
  return all;
}

/** Bare numbers behind the names of two runs and more: "rated 59, brisk 65". Behind one alone it may be a name or a time ("after 20"). */
function valuesOfRuns(prose: string, bare: readonly Stated[], named: Named): readonly Stated[] {
  const behind = bare.map((said) => ({ said, run: runBefore(prose, said, named) })).filter(({ run }) => run !== undefined);
  return new Set(behind.map(({ run }) => run)).size > 1 ? behind.map(({ said }) => said) : [];
}

function isRatio(said: Stated): boolean {
  return !hasUnit(said) && said.said.sides.every(({ amount }) => amount.style === 'digits' && amount.place < 0);
}

/** `before` is where the last decimal of this kind ended. */
function isBareDecimal(prose: string, said: Stated, before: number | undefined): boolean {
  return !hasUnit(said) && !isPrice(prose, said) && isLoneDecimal(prose, said, before);
}

/** The number in digits behind a word that makes it unreadable: "54.5" of "not 54.5". */
function bareInside(prose: string, { offset, measure }: Unread): Stated | undefined {
  if (measure) return undefined;
  const word = /^\p{L}+\s+(?=\d)/u.exec(prose.slice(offset))?.[0];
  const said = word === undefined ? undefined : readNumber(prose, offset + word.length);
  return said && !hasUnit(said) ? said : undefined;
}

/** Words that set a number against another one; it is as true as if it stood alone: "instead of 6.4 W", "rather than 85 °C". */
const CONTRAST = /(?:\binstead\s+of|\brather\s+than|\bunlike)\s+$/iu;

/** The number behind words of contrast, which the reader of words refuses with them. */
function contrasted(prose: string, said: Stated | Unread): Stated | undefined {
  if (!isUnread(said)) return undefined;
  const word = /^\p{L}+\s+/u.exec(prose.slice(said.offset))?.[0] ?? '';
  const from = said.offset + word.length;
  return CONTRAST.test(prose.slice(0, from)) ? readNumber(prose, from) : undefined;
}

/** The number that begins at an offset; what stands before it is blanked, so that offsets stay. */
function readNumber(prose: string, from: number): Stated | undefined {
  const said = findStated(' '.repeat(from) + prose.slice(from))[0];
  return said && !isUnread(said) && said.start === from ? said : undefined;
}

const UNIT_MISSING = 'its unit behind it: `59 °C`';

/** The unit of the number behind, where the same word stands before both. */
function unitAhead(prose: string, said: Stated | Unread, next: Listed | undefined): string | undefined {
  if (isUnread(said) || hasUnit(said) || !next || isUnread(next.said) || next.shared === undefined) return undefined;
  return borrowsAhead(prose, said, next.said.start) ? next.shared : undefined;
}

interface Around {
  /** The last number before it that has a unit. */
  readonly last: { readonly unit: string; readonly end: number } | undefined;
  /** Where numbers without a unit begin. */
  readonly bare: readonly number[];
  readonly own: ReadonlySet<string>;
}

/** The unit that a number without one has from what stands before it; undefined where it has none. */
function unitElsewhere(prose: string, said: Stated | Unread, { last, bare, own }: Around): string | undefined {
  if (isUnread(said) || hasUnit(said) || isPrice(prose, said)) return undefined;
  const isUnit = (word: string) => isUnitWord(word, own);
  const given = givenUnit(prose, said.start, isUnit);
  const lender = given && (!last || given.end > last.end) ? given : last;
  if (lender && borrows(prose, said, prose.slice(lender.end, said.start), bare)) return lender.unit;
  return announced(prose, said, isUnit) || undefined;
}

function meet(a: Span, b: Span): boolean {
  return a.start < b.end && b.start < a.end;
}

const RANKED = 'a claim: `fast.load_power is largest of *.load_power`, `all [rated brisk].load_power < quick.load_power`';

function startsAt(next: Stated | Unread | undefined): number {
  if (next === undefined) return Number.POSITIVE_INFINITY;
  return isUnread(next) ? next.offset : next.start;
}

/** `next` is where the next number begins: "three of the four settings" are two numbers. */
function listedOf(prose: string, said: Stated | Unread, own: ReadonlySet<string>, next: number): Listed {
  if (isUnread(said)) {
    const inner = insideOf(prose, said, own) ?? measureOf(prose, said);
    return inner ? { said, found: { ...inner, said } } : { said };
  }
  if (counts(prose, said)) {
    const unit = said.said.sides.at(-1)?.unit;
    return {
      said,
      found: { start: startOf(said), end: said.end + weighting(prose, said), said },
      ...(unit ? { shared: prose.slice(unit.start, unit.end) } : {}),
    };
  }
  const beside = hasUnit(said) || isPrice(prose, said) ? undefined : besideNumber(prose, said, own);
  if (!beside) return { said };
  const end = beside.unit === undefined && beside.end > next ? said.end : beside.end;
  return { said, found: { start: startOf(said), end, said }, ...(beside.unit === undefined ? {} : { shared: beside.unit }) };
}

/** The frequency weighting behind a sound level belongs to its unit: `38 dB(A)`. */
function weighting(prose: string, { end, unit }: Stated): number {
  return unit === 'dB' ? (/^\s?\([ACZ]\)/.exec(prose.slice(end))?.[0].length ?? 0) : 0;
}

/** Joins of a list whose last number has the unit of all. */
const LAST_JOINT = /^\s*(?:,?\s*(?:and|or|to|then|through|against|versus|vs\.?|instead\s+of|rather\s+than)|[/–-])\s*$/;
/** A list of three or more may end with a comma alone: "27, 40, 52 °C". */
const LAST_OF_MANY = new RegExp(`${LAST_JOINT.source}|^\\s*,\\s*$`);
const JOINT = /^\s*(?:,|,?\s*(?:and|or|then))\s*$/;

/** "Held there for 42 of its 60 minutes": a part of a time is a time. */
const PART_OF_TIME = /^\s+(?:out\s+)?of\s+(?:(?:the|its|those|these|all|our)\s+)?$/;

/** The number itself, or one whose unit stands elsewhere: "1.7, 1.9 and 2.3 GHz", "7.3 W against 6.4". */
function foundIn(prose: string, listed: readonly Listed[], index: number): Found[] {
  const { said, found } = listed[index] as Listed;
  if (found) return [found];
  if (isUnread(said) || hasUnit(said)) return [];
  for (let at = index + 1; at < listed.length; at += 1) {
    const [before, after] = [listed[at - 1] as Listed, listed[at] as Listed];
    if (isUnread(before.said) || isUnread(after.said)) return [];
    const between = prose.slice(before.said.end, after.said.start);
    const ofTime = at === index + 1 && isTime(after.said) && PART_OF_TIME.test(between) && standsAlone(prose, after.said);
    if (ofTime && /^\d/.test(prose.slice(said.start))) return [{ start: said.start, end: said.end, said, unit: after.shared! }];
    const last = at - index > 1 || follows(prose, listed, index) ? LAST_OF_MANY : LAST_JOINT;
    if (!(after.shared === undefined ? JOINT : last).test(between)) return [];
    if (after.shared !== undefined) return [{ start: said.start, end: said.end, said, unit: after.shared }];
    if (after.found || hasUnit(after.said)) return [];
  }
  return [];
}

/** Whether a number stands behind another one of its list. */
function follows(prose: string, listed: readonly Listed[], index: number): boolean {
  const [before, own] = [listed[index - 1]?.said, listed[index]?.said];
  if (!before || !own || isUnread(before) || isUnread(own)) return false;
  return JOINT.test(prose.slice(before.end, own.start));
}

/** Whether a time is one for itself: not that of "the 10-second samples", "the 60 minute runs", "the 30 s soaks". */
function standsAlone(prose: string, { end, said }: Stated): boolean {
  const unit = said.sides.at(-1)?.unit;
  return ENDS.test(prose.slice(end)) || (unit !== undefined && /\p{L}{2,}s$/u.test(prose.slice(unit.start, unit.end)));
}

function isTime({ said }: Stated): boolean {
  return said.sides.at(-1)?.unit?.kind === 'time';
}

function hasUnit({ said }: Stated): boolean {
  return said.sides.at(-1)?.unit !== undefined;
}

function isPrice(prose: string, { start }: Stated): boolean {
  return CURRENCY.test(prose.slice(0, start));
}

/** "Rose by 6 degrees", "a rise of 6 degrees": the words of comparison before the number belong to it. */
function startOf({ start, said }: Stated): number {
  return Math.min(start, said.comparison?.start ?? start);
}

/** The whole phrase, where no part of it can be read: "2,4 GHz", "sixty-odd degrees". */
function measureOf(prose: string, { measure }: Unread): Span | undefined {
  if (!measure || !isMeasured(measure.unit) || CURRENCY.test(prose.slice(0, measure.start))) return undefined;
  return { start: measure.start, end: measure.end };
}

function isMeasured({ spelling }: UnitSaid): boolean {
  return spelling !== 'd' && MEASURED.has(readUnit(spelling)?.canonical ?? '');
}

/** How far behind a word that makes a number unreadable the number is looked for. */
const REACH = 60;

/** The number itself, where the words before it ("never", "not") keep it from being read with them. */
function insideOf(prose: string, { offset, measure }: Unread, own: ReadonlySet<string>): Span | undefined {
  const rest = prose.slice(offset, measure?.end ?? offset + REACH);
  const word = /^\p{L}+(?:['’]\p{L}+)?\s+/u.exec(rest)?.[0] ?? '';
  for (const from of new Set([0, word.length])) {
    const found = findStated(rest.slice(from)).find((said) => !isUnread(said)) as Stated | undefined;
    if (!found) continue;
    const end = counts(rest.slice(from), found) ? found.end : besideNumber(rest.slice(from), found, own)?.end;
    if (end !== undefined) return { start: offset + from + found.start, end: offset + from + end };
  }
  return undefined;
}

const CURRENCY = /[$€£¥₹]\s?$/;
/** "Power doubles from step to step". */
const VERBS = /^(?:doubled|doubles|tripled|triples|quadrupled|halved)$/i;
/** After these a multiple compares: "three times as fast". "Three times" alone counts, "wrong twice" too. */
const COMPARES = /^\s*(?:as|the|that|what|its|faster|slower|more|less)\b/;

/** An idiom: "a hundred per cent certain". */
const SURE = /^(?:100|(?:a|one)\s+hundred)\s*(?:%|per\s?cent)\s+(?:certain|sure|confident|convinced)\b/i;

/** Whether a phrase is a number with a unit of the trade. "An hour" is an idiom unless a hedge makes a number of it; days are of the calendar, a price is none. */
function counts(prose: string, said: Stated): boolean {
  const side = said.said.sides.at(-1);
  const unit = side?.unit;
  if (!side || !unit || !isMeasured(unit) || SURE.test(prose.slice(said.start))) return false;
  if (CURRENCY.test(prose.slice(0, said.start)) || CURRENCY.test(prose.slice(0, side.start))) return false;
  if (unit.kind === 'times')
    return (
      said.hedge !== undefined ||
      HAPPENED.test(prose.slice(0, said.start)) ||
      said.said.comparison !== undefined ||
      COMPARES.test(prose.slice(said.end)) ||
      VERBS.test(prose.slice(side.start, side.end))
    );
  return !side.amount.article || said.hedge !== undefined;
}
