/**
 * A published number that the data no longer gives. A script keeps what was recorded. A note says what its data still allows, once the
 * author gives the reason as a correction.
 */
import type { Element } from 'hast';
import type { Place, Problem } from '../../problem.ts';
import { addressedFigure } from '../expression/address.ts';
import { askedOf } from '../expression/asked-of.ts';
import { boundWords } from '../expression/bound-words.ts';
import type { Span } from '../expression/expression-tree.ts';
import { isTextProblem, parseExpression } from '../expression/parse-expression.ts';
import type { RuleId } from '../rules/rules.ts';
import { leavesRoomForBound } from '../stated/around-bound.ts';
import type { AbsentEntry, LedgerEntry } from '../written.ts';
import { correctedWords } from './corrected-words.ts';
import { heldAnchor, type PageElement } from './page-node.ts';
import type { Writing } from './writing.ts';

/** A number of a published note or script as it was printed or said. */
export type Recorded = Pick<LedgerEntry, 'kind' | 'text' | 'expression' | 'value' | 'unit' | 'u' | 'shown'>;

/** What a note says behind a published number that the data no longer gives, where no bound says more. */
export const NOT_TOLD = '(this can no longer be told)';

/** A number of a script's table as it was recorded, where the figure is absent by now; undefined where nothing of the kind was recorded. */
export function recordedCell(writing: Writing, expression: string, place: Place, why: string): Element | undefined {
  if (writing.kind === 'note') return undefined;
  const found = writing.recorded.find((each) => each.kind === 'table' && each.expression === expression);
  return found && standIn(writing, { ...found, held: askedOf(expression, 'expression', writing.subjects) }, place, why);
}

/** What a directive asks for. `unit`: in which the author wants it printed. `span`: where it stands in the source, if it stands in a sentence. */
export interface Asked extends Pick<Recorded, 'kind' | 'text' | 'expression'> {
  readonly unit?: string | undefined;
  readonly span?: Span;
}

/**
 * The element that stands for a published number, where all that is wrong is that the data no longer gives it; undefined where nothing
 * of the kind was published, or no correction says so yet. Of a script the problems are set apart: they are a correction now, and an
 * error again when it is published anew. Elsewhere the number is kept as one that is absent, with what the note may say in its place.
 */
export function recordedInstead(
  writing: Writing,
  asked: Asked,
  place: Place,
  problems: readonly Problem[],
): PageElement | undefined {
  const shown = toldInstead(writing, asked, place, problems);
  return shown === undefined ? undefined : heldAnchor(writing.drafts.length - 1, shown);
}

/** The same without an element: the number is kept among the drafts, and what it says is returned. */
export function toldInstead(writing: Writing, asked: Asked, place: Place, problems: readonly Problem[]): string | undefined {
  const { kind, text, expression } = asked;
  const published = writing.recorded.filter((each) => each.kind === kind && each.text === text);
  const found = published.find((each) => each.expression === expression) ?? published[0];
  if (problems.some(({ rule }) => !(found ? GONE : ABSENT).has(rule as RuleId))) return undefined;
  const why = [...new Set(problems.map(reasonOf))].join('; ');
  if (found === undefined) {
    if (problems.length > 0) writing.absent.push({ kind, line: place.line, column: place.column, expression, why });
    return undefined;
  }
  const held = askedOf(expression, kind === 'claim' ? 'condition' : 'expression', writing.subjects);
  if (writing.kind !== 'note') {
    writing.unborne.push(...problems);
    const instead = boundOf(writing, asked);
    return standing(writing, { ...found, held, ...(instead && { instead }) }, place, noLongerGiven(why));
  }
  const instead = boundOf(writing, asked) ?? withoutNumber(found.shown);
  if (correctedWords(writing, expression).includes(plain(instead)))
    return standing(writing, { ...found, expression, shown: instead, held }, place, noLongerGiven(why));
  const at = problems.map(({ place: { line, column } }): AbsentPlace => ({ line, column }));
  writing.absent.push({ kind, line: place.line, column: place.column, expression, why, instead, held, at });
  return undefined;
}

type AbsentPlace = NonNullable<AbsentEntry['at']>[number];

const ABSENT: ReadonlySet<RuleId> = new Set(['absent-figure']);
/** A figure that was published and has no name any more: the run has no such table, spot, test or channel now. */
const GONE: ReadonlySet<RuleId> = new Set(['absent-figure', 'unknown-figure', 'unknown-detail']);

/**
 * The bound of the one figure that is asked for. Claims have words of their own, a number that borrows its unit has no bound, and neither
 * has one beside a word that would hedge or deny it.
 */
function boundOf({ subjects, source }: Writing, { kind, expression, unit, span }: Asked): string | undefined {
  if (kind === 'claim' || (kind === 'stated' && unit !== undefined)) return undefined;
  const tree = parseExpression(expression);
  if (isTextProblem(tree) || tree.kind !== 'address') return undefined;
  const figure = addressedFigure(tree, subjects);
  if (figure === undefined || !('absent' in figure) || figure.bound === undefined) return undefined;
  if (span && !leavesRoomForBound(source.slice(0, span.start), source.slice(span.end), figure.bound.unit)) return undefined;
  return boundWords(figure, unit);
}

/** For readers, who know no addresses. */
function reasonOf({ rule, found }: Problem): string {
  return rule === 'absent-figure' ? found.replace(/^`.*?` is absent: /, '') : 'The run has no such figure';
}

function noLongerGiven(why: string): string {
  return `no longer given: ${why.charAt(0).toLowerCase()}${why.slice(1)}`;
}

function withoutNumber(shown: string): string {
  return shown.endsWith(NOT_TOLD) ? shown : `${shown} ${NOT_TOLD}`;
}

function plain(shown: string): string {
  return shown.replaceAll(/\s+/g, ' ').trim();
}

type Standing = Recorded & Pick<LedgerEntry, 'held' | 'instead'>;

function standing(writing: Writing, found: Standing, { file, line, column }: Place, rests: string): string {
  writing.drafts.push({ ...found, file, line, column, uncertainty: '', verdict: 'cannot be told', rests });
  return found.shown;
}

function standIn(writing: Writing, found: Standing, place: Place, rests: string): Element {
  const shown = standing(writing, found, place, rests);
  return heldAnchor(writing.drafts.length - 1, shown);
}
