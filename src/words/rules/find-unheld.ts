/** Numbers with a unit that stand in the prose and that nothing holds: for the rule, and for the command that holds them. */
import type { Root } from 'mdast';
import { readUnit } from '../../quantities/units.ts';
import type { Span } from '../expression/expression-tree.ts';
import { numberSpans } from '../page/number-spans.ts';
import type { UnitSaid } from '../stated/phrase.ts';
import { findStated, isUnread, type Stated, type Unread } from '../stated/read.ts';

export interface UnheldNumber extends Span {
  /** As it stands in the source, hedge and comparison included. */
  readonly source: string;
  /** What it says, or why that cannot be read; its offsets are into the stretch of prose and mean nothing here. */
  readonly said: Stated | Unread;
  /** Within the words of a link, where no directive can stand. */
  readonly linked: boolean;
}

/** Units of this trade's figures; others (an inch, a bit) are no measured number here. */
const MEASURED = new Set(['°C', 'K', 's', 'Hz', 'A', 'V', 'W', 'J', '1', 'K/W', 'K/s', 'rpm', 'A·s', 'V/A']);

/** All of a tree, in the order of the source. */
export function findUnheld(source: string, tree: Root): UnheldNumber[] {
  return numberSpans(tree).flatMap((span) => {
    const prose = masked(source.slice(span.start, span.end));
    const place = ({ start, end }: Span) => ({ start: span.start + start, end: span.start + end });
    return numbersIn(prose).map(({ said, ...at }) => {
      const { start, end } = place(at);
      return { start, end, said, source: source.slice(start, end), linked: span.linked };
    });
  });
}

/** Entities and marks of Markdown as blanks of the same length, so that `**71** degrees` and `71&nbsp;°C` are read and offsets stay. */
function masked(prose: string): string {
  return prose.replace(/&(?:nbsp|thinsp|#\d+);|[*_`]+|~~|\\(?=[!-/:-@[-`{-~])|^[ \t]*>+/gm, (mark) => ' '.repeat(mark.length));
}

interface Found extends Span {
  readonly said: Stated | Unread;
}

function numbersIn(prose: string): Found[] {
  return findStated(prose).flatMap((said): Found[] => {
    if (!isUnread(said)) return counts(prose, said) ? [{ start: startOf(said), end: said.end, said }] : [];
    const inner = insideOf(prose, said) ?? measureOf(prose, said);
    return inner ? [{ ...inner, said }] : [];
  });
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
function insideOf(prose: string, { offset, measure }: Unread): Span | undefined {
  const rest = prose.slice(offset, measure?.end ?? offset + REACH);
  const word = /^\p{L}+(?:['’]\p{L}+)?\s+/u.exec(rest)?.[0] ?? '';
  for (const from of new Set([0, word.length])) {
    const found = findStated(rest.slice(from)).find((said) => !isUnread(said)) as Stated | undefined;
    if (found && counts(rest.slice(from), found)) return { start: offset + from + found.start, end: offset + from + found.end };
  }
  return undefined;
}

const CURRENCY = /[$€£¥₹]\s?$/;
/** After these a multiple compares: "three times as fast". "Three times" alone counts, "wrong twice" too. */
const COMPARES = /^\s*(?:as|the|that|what|its|faster|slower|more|less)\b/;

/** Whether a phrase is a number with a unit of the trade. "An hour" is an idiom unless a hedge makes a number of it; days are of the calendar, a price is none. */
function counts(prose: string, said: Stated): boolean {
  const side = said.said.sides.at(-1);
  const unit = side?.unit;
  if (!side || !unit || !isMeasured(unit)) return false;
  if (CURRENCY.test(prose.slice(0, said.start)) || CURRENCY.test(prose.slice(0, side.start))) return false;
  if (unit.kind === 'times')
    return said.hedge !== undefined || said.said.comparison !== undefined || COMPARES.test(prose.slice(said.end));
  return !side.amount.article || said.hedge !== undefined;
}
