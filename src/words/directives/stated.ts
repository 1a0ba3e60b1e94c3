/** `:stated[words]{is="expression"}`: keeps the author's words; an error where the data no longer bears them. */
import type { Nodes } from 'mdast';
import { interval95 } from '../../quantities/uncertainty.ts';
import { isCount } from '../expression/counts.ts';
import type { Evaluated } from '../expression/evaluate.ts';
import { evaluate } from '../expression/expression.ts';
import { ownInterval } from '../expression/interval-margins.ts';
import { standInsText } from '../expression/stand-ins.ts';
import { locate } from '../expression/text-problem.ts';
import { correctedWords } from '../page/corrected-words.ts';
import { heldAnchor, type PageElement } from '../page/page-node.ts';
import { recordedInstead } from '../page/recorded-words.ts';
import { placeAt, report, spanOf, type Writing, warn } from '../page/writing.ts';
import { isUnread, readStated, type Stated } from '../stated/read.ts';
import { unread } from '../stated/stated-number.ts';
import { sensed } from './direction.ts';
import { wordsOf } from './directive-words.ts';
import type { WrittenDirective } from './read-directive.ts';
import { turnedRound } from './sentence-order.ts';
import { allowedWords, reportNarrow, reportStated, reportUnread, restsOn, turnedReport, withUncertainty } from './stated-report.ts';
import { shareOutside, verdictOf, wordingFor } from './stated-verdict.ts';
import { entryOf, holdsNothing, printed } from './value.ts';

/** The words as a link to what holds them, with what stood in for something that was not measured; or null after reporting what is wrong. Words that the data does not bear are an error, and are kept. */
export function stated(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const words = wordsOf(writing, read, node, 'a stated number');
  const is = read.attributes.find(({ name }) => name === 'is');
  if (words === null || !is) return null;
  const place = placeAt(writing, is.valueStart);
  const unit = read.attributes.find(({ name }) => name === 'unit')?.value;
  const evaluated = evaluate(is.value, writing.subjects, place);
  if ('problems' in evaluated) {
    const span = { start: spanOf(node).start, end: read.end };
    const asked = { kind: 'stated', text: labelOf(read).text, expression: is.value.trim(), unit, span } as const;
    const said = recordedInstead(writing, asked, placeAt(writing, span.start), evaluated.problems);
    if (said) return said;
    writing.problems.push(...evaluated.problems);
    return null;
  }
  if (evaluated.held.length === 0) {
    writing.problems.push(locate(holdsNothing({ start: 0, end: is.value.length }), place));
    return null;
  }
  const saidBy = (text: string) => {
    const said = readStated(unit === undefined ? text : `${text} ${unit}`, evaluated.quantity.unit);
    if (isUnread(said)) return said;
    if (said.counts && !isCount(is.value, writing.subjects)) return unread('a count where the data has none', 0, COUNTS);
    return sensed(said, is.value, writing.subjects);
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

const COUNTS = 'a count: `throttle_events`, an outcome of attempts, `count` or `kinds`';

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
  if (other !== undefined) warn(writing, { ...turnedReport(words, other, expression), start, end: read.end });
}

/** A sentence ends at its full stop, a paragraph at a blank line. */
const SENTENCE_END = /[.!?](?=["')\]*_]*\s)|\r?\n[ \t>]*\r?\n/;

/** A suggestion without the unit that the number borrows. */
function withoutUnit(wording: string, { attributes }: WrittenDirective): string {
  const unit = attributes.find(({ name }) => name === 'unit')?.value;
  return unit !== undefined && wording.endsWith(` ${unit}`) ? wording.slice(0, -unit.length - 1) : wording;
}

function labelOf({ label }: WrittenDirective): NonNullable<WrittenDirective['label']> {
  return label as NonNullable<WrittenDirective['label']>;
}
