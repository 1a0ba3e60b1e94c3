/** Law 13 for a note: a published number that prints differently needs the author's reason, and stands as a correction. */
import { error, type Place, type Problem, warning } from '../../problem.ts';
import type { Note, StatedCorrection } from '../../register/register.ts';
import type { Correction, PublishedEntry, PublishedState } from '../../register/sealed/published-states.ts';
import { plainExpression } from '../../words/expression/plain-expression.ts';
import { NO_LONGER } from '../../words/page/corrected-words.ts';
import { NOT_TOLD } from '../../words/page/recorded-words.ts';
import { byCause, type Cause, causesOfChange } from './causes.ts';
import { ABSENT, matchStates, type Pair } from './match.ts';
import { type Changed, isOwnWords, isPast, nowOf, numberOf, openReasons, reasonsFor } from './reasons.ts';
import { plain, printsDifferently } from './same-value.ts';
import type { Sources } from './sources.ts';

export interface JudgedNote {
  /** In the order of the note. */
  readonly corrections: readonly Correction[];
  readonly problems: readonly Problem[];
  /** What to write below `corrections`, for all that has no reason yet. */
  readonly asked: readonly AskedNumber[];
  /** Places of published words that are no longer true, and are told here: `line:column`. */
  readonly told: ReadonlySet<string>;
}

/** A number and what it says now, as a correction of the front matter has them. */
export interface AskedNumber {
  readonly number: string;
  readonly was: string;
  readonly now: string;
  /** The newest day of the data behind it. */
  readonly since: string;
}

/** What judging needs besides the two states. */
export interface Judging {
  readonly sources: Sources;
  /** The day of the newest run behind a subject. */
  readonly dateOf: (subject: string) => string;
  /** For words of the author's that no longer hold: those that would. */
  readonly insteadOf: (entry: PublishedEntry) => string | undefined;
}

/** Compares a note with its published state; reasons are those of its front matter. */
export function judgeNote(note: Note, state: PublishedState, present: PublishedState, judging: Judging): JudgedNote {
  const { pairs } = matchStates(state, present);
  const moved = pairs.flatMap((pair) => changeOf(pair, judging));
  const printed = pairs.map((pair): Changed => moved.find(({ is }) => is === pair.is) ?? pair);
  const changes = grouped([...moved, ...returned(note, pairs, moved, state)]);
  const used = new Set<StatedCorrection>();
  const unexplained: Unexplained[] = [];
  const corrections = changes.flatMap((each) => {
    const reasons = reasonsFor(each[0]!, openReasons(note, state.history, numberOf(each[0]!.is)), printed);
    for (const reason of reasons) used.add(reason);
    if (reasons.length === 0) {
      unexplained.push({
        pairs: each,
        cause: causesOfChange(each[0]!, state, judging.sources),
        since: sinceOf(each[0]!, state, judging),
      });
    }
    return stepsOf(each[0]!, reasons);
  });
  const causes = byCause(unexplained);
  const problems = causes.flatMap((cause) => reasonsAsked(note, cause, state));
  return {
    corrections,
    problems: [...problems, ...unused(note, used, state, new Set(causes.flat().map(({ pairs: [first] }) => numberOf(first!.is))))],
    asked: causes.flat().map(askedBy),
    told: new Set(unexplained.flatMap(({ pairs }) => pairs.filter(isTold).map(({ is }) => `${is.line}:${is.column}`))),
  };
}

/**
 * Numbers that were corrected, and print as they were published again: what they printed meanwhile is no longer so either. Of words of the
 * author's own only those count that the correction repeats, since else it does not say whether it was of them or of a number.
 */
function returned(note: Note, pairs: readonly Pair[], moved: readonly Changed[], { history }: PublishedState): Pair[] {
  return pairs.filter(({ is }) => {
    const reasons = openReasons(note, history, numberOf(is));
    if (isOwnWords(is)) {
      const withdrawn = [NO_LONGER, NOT_TOLD].map((mark) => `${plain(is.shown)} ${mark}`);
      return !moved.some((each) => each.is === is) && reasons.some(({ now }) => withdrawn.includes(plain(now)));
    }
    if (moved.some((each) => numberOf(each.is) === numberOf(is))) return false;
    const printed = new Set(pairs.filter((each) => numberOf(each.is) === numberOf(is)).map((each) => plain(each.is.shown)));
    return reasons.some(({ now }) => !printed.has(plain(now)));
  });
}

function askedBy({ pairs, since }: Unexplained): AskedNumber {
  const [first] = pairs;
  return { number: numberOf(first!.is), was: plain(first!.was.shown), now: nowOf(first!), since };
}

function changeOf(pair: Pair, { insteadOf }: Judging): Changed[] {
  if (pair.instead !== undefined) return [pair];
  if (isError(pair)) return [];
  const instead = isUntrue(pair) ? insteadOf(pair.is) : undefined;
  if (instead !== undefined) return [{ ...pair, instead }];
  return printsDifferently(pair) ? [pair] : [];
}

/** Published words of the author's own that the data no longer bears. */
function isUntrue({ was, is }: Pair): boolean {
  return isOwnWords(is) && plain(was.shown) === plain(is.shown) && was.verdict !== is.verdict;
}

/** Whether its place has a problem of its own, which is told here with what to write. */
function isTold(changed: Changed): boolean {
  return changed.instead !== undefined || isUntrue(changed);
}

/** The newest day of what a number rests on, and no day before it was published. */
function sinceOf({ was, is }: Pair, { date }: PublishedState, { dateOf }: Judging): string {
  return [date, ...[...was.held, ...is.held].map(dateOf)].sort().at(-1) as string;
}

/** A change without a reason. */
interface Unexplained {
  readonly pairs: readonly Changed[];
  readonly cause: Cause;
  readonly since: string;
}

/** Absent where no table says so and nothing may be said instead, which is an error of its own. */
function isError({ is }: Pair): boolean {
  return is.kind !== 'table' && is.shown === ABSENT;
}

/** The same number printed the same way in several places changes once. */
function grouped(pairs: readonly Changed[]): Changed[][] {
  return [...Map.groupBy(pairs, (pair) => JSON.stringify([numberOf(pair.is), plain(pair.was.shown), nowOf(pair)])).values()];
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
  return cause.map(({ pairs, cause: { words: why } }, index) => {
    const [pair] = pairs as [Changed];
    const more = pairs.length === 1 ? '' : `, here and in ${pairs.length - 1} more ${pairs.length === 2 ? 'place' : 'places'}`;
    const found = `${saidOf(pair, more)}; ${why}`;
    const remedy = index === 0 ? remedyFor(note, cause) : `one reason serves for all of this cause: see line ${first!.line}`;
    const expected = `what was published on ${date}, or the reason why that no longer stands`;
    return error('published-number', placeOf(note, pairs), found, { expected, remedy });
  });
}

function saidOf({ was, is, instead }: Changed, more: string): string {
  if (is.verdict === 'cannot be told' && Number.isNaN(is.value) && instead !== undefined) {
    return `the data no longer gives a published number${more}: \`${numberOf(is)}\` was ${plain(was.shown)}; ${plain(is.rests ?? '')}`;
  }
  if (instead === undefined) {
    return `a published number prints differently${more}: \`${numberOf(is)}\` was ${plain(was.shown)} and is ${plain(is.shown)}`;
  }
  return `published words are no longer true${more}: "${plain(was.shown)}"; ${plain(is.rests ?? '')}`;
}

function placeOf({ file }: Note, [pair]: readonly Pair[]): Place {
  const { line, column } = pair!.is;
  return { file, line, column };
}

/** What to write, and the command that writes it, into the scripts that say the same too. */
function remedyFor({ file }: Note, cause: readonly Unexplained[]): string {
  const since = cause
    .map((each) => each.since)
    .sort()
    .at(-1) as string;
  const lines = correctionLines(cause.map(askedBy), since, 'why');
  const right = cause.length === 1 ? 'the new number is right' : 'the new numbers are right';
  const all = 'or for all notes and scripts at once: npm run correct -- --reason "why"';
  return `where ${right}, write below \`corrections:\` in the front matter of ${file}\n${lines.map((line) => `      ${line}`).join('\n')}\n      ${all}`;
}

/** One entry of `corrections`, for numbers that share a reason; what is corrected alike in two places stands once. */
export function correctionLines(asked: readonly Pick<AskedNumber, 'number' | 'now'>[], since: string, reason: string): string[] {
  const numbers = asked.filter(
    (each, index) => asked.findIndex(({ number, now }) => number === each.number && now === each.now) === index,
  );
  const because = [`  since: ${since}`, `  reason: ${inYaml(reason)}`];
  const [only] = numbers;
  if (numbers.length === 1) return [`- number: ${inYaml(only!.number)}`, `  now: ${inYaml(only!.now)}`, ...because];
  return [
    '- numbers:',
    ...numbers.flatMap(({ number, now }) => [`    - number: ${inYaml(number)}`, `      now: ${inYaml(now)}`]),
    ...because,
  ];
}

/** A text as a value of YAML: as it is where nothing in it could be taken for more than words. */
function inYaml(text: string): string {
  const isPlain =
    /^[\p{L}\p{N}−(][^"'\n]*$/u.test(text) && !/: |\s#|[:\s]$/.test(text) && !/^(?:yes|no|true|false|null|on|off)$/i.test(text);
  return isPlain ? text : `'${text.replaceAll("'", "''")}'`;
}

/** Reasons that serve for nothing, neither now nor in an earlier publication; of a number that asks for another one nothing is told. */
function unused(
  { corrections = [] }: Note,
  used: ReadonlySet<StatedCorrection>,
  { history }: PublishedState,
  asked: ReadonlySet<string>,
): Problem[] {
  return corrections
    .filter((stated) => !used.has(stated) && !isPast(stated, history) && !asked.has(plainExpression(stated.number)))
    .map((stated) =>
      warning('unused-correction', stated.place, `no published number \`${stated.number}\` now prints as ${stated.now}`, {
        remedy: 'correct `number` and `now`, or remove this correction',
      }),
    );
}
