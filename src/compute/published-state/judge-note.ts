/** Law 13 for a note: a published number that prints differently needs the author's reason, and stands as a correction. */
import { error, type Place, type Problem, warning } from '../../problem.ts';
import type { Note, StatedCorrection } from '../../register/register.ts';
import type { Correction, PublishedState } from '../../register/sealed/published-states.ts';
import { plainExpression } from '../../words/expression/plain-expression.ts';
import { causesOfChange } from './causes.ts';
import { matchStates, type Pair } from './match.ts';
import { plain, printsDifferently } from './same-value.ts';
import type { Sources } from './sources.ts';

export interface JudgedNote {
  /** Open ones, in the order of the note. */
  readonly corrections: readonly Correction[];
  readonly problems: readonly Problem[];
}

/** Compares a note with its published state; reasons are those of its front matter. */
export function judgeNote(note: Note, state: PublishedState, present: PublishedState, sources: Sources): JudgedNote {
  const changes = grouped(matchStates(state, present).pairs.filter((pair) => printsDifferently(pair) && !isError(pair)));
  const used = new Set<StatedCorrection>();
  const unexplained: Unexplained[] = [];
  const corrections = changes.flatMap((pairs) => {
    const reasons = reasonsFor(note, pairs, present);
    for (const reason of reasons) used.add(reason);
    if (reasons.length === 0) unexplained.push({ pairs, why: causesOfChange(pairs[0]!, state, sources) });
    return stepsOf(pairs[0]!, reasons);
  });
  const problems = [...Map.groupBy(unexplained, ({ why }) => why).values()].flatMap((cause) => reasonsAsked(note, cause, state));
  return { corrections, problems: [...problems, ...unused(note, used, state)] };
}

/** A change without a reason. */
interface Unexplained {
  readonly pairs: readonly Pair[];
  /** Its cause in words. */
  readonly why: string;
}

/** Absent where no table says so, which is an error of its own. */
function isError({ is }: Pair): boolean {
  return is.kind === 'value' && is.verdict === 'cannot be told';
}

/** The same number printed the same way in several places changes once. */
function grouped(pairs: readonly Pair[]): Pair[][] {
  return [...Map.groupBy(pairs, ({ was, is }) => JSON.stringify([numberOf(is), plain(was.shown), plain(is.shown)])).values()];
}

function numberOf({ expression }: Pair['is']): string {
  return plainExpression(expression);
}

/** The reasons of a change, oldest first, the last being the one for what is printed now; none where that one is missing. */
function reasonsFor({ corrections = [] }: Note, [pair]: readonly Pair[], present: PublishedState): StatedCorrection[] {
  const { is } = pair!;
  const own = corrections.filter(({ number }) => plainExpression(number) === numberOf(is)).toSorted((a, b) => order(a, b));
  const last = own.findLastIndex(({ now }) => plain(now) === plain(is.shown));
  if (last < 0) return [];
  const elsewhere = new Set(present.entries.filter((entry) => numberOf(entry) === numberOf(is)).map(({ shown }) => plain(shown)));
  return own.slice(0, last + 1).filter((reason, index) => index === last || !elsewhere.has(plain(reason.now)));
}

function order(a: StatedCorrection, b: StatedCorrection): number {
  return a.since < b.since ? -1 : a.since > b.since ? 1 : 0;
}

/** One correction a reason: from what was published to what is printed, by way of what was printed between. */
function stepsOf({ was, is }: Pair, reasons: readonly StatedCorrection[]): Correction[] {
  return reasons.map(({ since, reason, now }, index) => ({
    since,
    number: numberOf(is),
    was: plain(index === 0 ? was.shown : reasons[index - 1]!.now),
    is: plain(now),
    reason,
    sentence: was.sentence,
  }));
}

/** One problem a number. What to write stands with the first of those that one cause moved, for all of them. */
function reasonsAsked(note: Note, cause: readonly Unexplained[], { date }: PublishedState): Problem[] {
  const [first] = cause.map(({ pairs }) => placeOf(note, pairs));
  return cause.map(({ pairs, why }, index) => {
    const { was, is } = pairs[0]!;
    const more = pairs.length === 1 ? '' : `, here and in ${pairs.length - 1} more ${pairs.length === 2 ? 'place' : 'places'}`;
    const found = `a published number prints differently${more}: \`${numberOf(is)}\` was ${plain(was.shown)} and is ${plain(is.shown)}; ${why}`;
    const remedy = index === 0 ? remedyFor(note, cause) : `one reason serves for all of this cause: see line ${first!.line}`;
    const expected = `what was published on ${date}, or the reason why that no longer stands`;
    return error('published-number', placeOf(note, pairs), found, { expected, remedy });
  });
}

function placeOf({ file }: Note, [pair]: readonly Pair[]): Place {
  const { line, column } = pair!.is;
  return { file, line, column };
}

function remedyFor({ file }: Note, cause: readonly Unexplained[]): string {
  const numbers = cause.map(({ pairs }) => [`number: ${numberOf(pairs[0]!.is)}`, `now: ${plain(pairs[0]!.is.shown)}`]);
  const because = ['  since: the day', '  reason: why'];
  const lines =
    numbers.length === 1
      ? [`- ${numbers[0]![0]}`, `  ${numbers[0]![1]}`, ...because]
      : ['- numbers:', ...numbers.flatMap(([number, now]) => [`    - ${number}`, `      ${now}`]), ...because];
  const right = numbers.length === 1 ? 'the new number is right' : 'the new numbers are right';
  return `where ${right}, write below \`corrections:\` in the front matter of ${file}\n${lines.map((line) => `      ${line}`).join('\n')}`;
}

/** Reasons that serve for nothing, neither now nor in an earlier publication. */
function unused({ corrections = [] }: Note, used: ReadonlySet<StatedCorrection>, { history }: PublishedState): Problem[] {
  const past = (stated: StatedCorrection) =>
    history.some(({ number, is }) => number === plainExpression(stated.number) && is === plain(stated.now));
  return corrections
    .filter((stated) => !used.has(stated) && !past(stated))
    .map((stated) =>
      warning('unused-correction', stated.place, `no published number \`${stated.number}\` now prints as ${stated.now}`, {
        remedy: 'correct `number` and `now`, or remove this correction',
      }),
    );
}
