/** `:claim[words]{is="condition" outcome=…}`: keeps the words; the data must decide the condition as the author says. */
import type { Nodes } from 'mdast';
import { meant, oneOf } from '../../register/values/names.ts';
import { type Judgement, judge, type Verdict } from '../expression/condition.ts';
import { isTextProblem, parseCondition } from '../expression/parse-expression.ts';
import { locate, type TextProblem } from '../expression/text-problem.ts';
import { correctedWords, NO_LONGER } from '../page/corrected-words.ts';
import { heldAnchor, type PageElement } from '../page/page-node.ts';
import { recordedInstead } from '../page/recorded-words.ts';
import { placeAt, report, spanOf, type Writing } from '../page/writing.ts';
import { claimRests, reportClaim } from './claim-report.ts';
import { wordsOf } from './directive-words.ts';
import type { WrittenDirective } from './read-directive.ts';
import { entryOf, holdsNothing, printed } from './value.ts';

/** What `outcome` may say, and the verdicts that may then be published. A condition that should fail is written with `not`. */
const OUTCOMES: ReadonlyMap<string, readonly Verdict[]> = new Map<string, readonly Verdict[]>([
  ['holds', ['holds']],
  ['untold', ['cannot be told']],
  ['holds or untold', ['holds', 'cannot be told']],
]);

/** The words as a link to what holds them, or null after reporting what is wrong. An outcome that may not be published is an error, and is kept. */
export function claim(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const words = wordsOf(writing, read, node, 'a claim');
  const is = read.attributes.find(({ name }) => name === 'is');
  const outcomes = outcomesOf(writing, read);
  if (words === null || !is || !outcomes) return null;
  const place = placeAt(writing, is.valueStart);
  const refuse = (problems: readonly TextProblem[]): null => {
    writing.problems.push(...problems.map((problem) => locate(problem, place)));
    return null;
  };
  const tree = parseCondition(is.value);
  if (isTextProblem(tree)) return refuse([tree]);
  const judgement = judge(tree, writing.subjects);
  if ('problems' in judgement) {
    const problems = judgement.problems.map((problem) => locate(problem, place));
    const asked = { kind: 'claim', text: read.label?.text ?? '', expression: is.value.trim() } as const;
    const said = recordedInstead(writing, asked, placeAt(writing, spanOf(node).start), problems);
    return said ?? refuse(judgement.problems);
  }
  if (judgement.held.length === 0) return refuse([holdsNothing({ start: 0, end: is.value.length })]);
  return kept(writing, { read, node, words, judgement, outcomes, condition: is.value.trim() });
}

interface Found {
  readonly read: WrittenDirective;
  readonly node: Nodes;
  readonly words: string;
  readonly judgement: Judgement;
  readonly outcomes: readonly Verdict[];
  readonly condition: string;
}

function kept(writing: Writing, { read, node, words, judgement, outcomes, condition }: Found): PageElement | null {
  const { start } = spanOf(node);
  const { verdict, comparisons, held } = judgement;
  const stands = outcomes.includes(verdict);
  const gone = `${words} ${NO_LONGER}`;
  const corrected = !stands && correctedWords(writing, condition).includes(gone);
  if (!stands && !corrected) {
    report(writing, { ...reportClaim(words, condition, judgement, outcomes), start, end: read.end });
  }
  const shown = printed((comparisons[0] as (typeof comparisons)[number]).left);
  if ('refused' in shown) return null;
  const printedWords = corrected ? gone : words;
  const entry = entryOf(
    'claim',
    placeAt(writing, start),
    read.label?.text ?? '',
    condition,
    { ...shown, shown: printedWords },
    held,
  );
  const instead = stands || corrected ? {} : { instead: gone };
  writing.drafts.push({ ...entry, verdict, rests: claimRests(judgement), ...instead });
  return heldAnchor(writing.drafts.length - 1, printedWords);
}

/** The verdicts that the author lets be published: by default that it holds. Undefined after reporting a value that is none. */
function outcomesOf(writing: Writing, { attributes }: WrittenDirective): readonly Verdict[] | undefined {
  const written = attributes.find(({ name }) => name === 'outcome');
  const outcomes = OUTCOMES.get(written?.value ?? 'holds');
  if (outcomes || !written) return outcomes;
  report(writing, {
    rule: 'attribute-value',
    start: written.valueStart,
    end: written.valueStart + written.value.length,
    found: `the outcome \`${written.value}\``,
    expected: oneOf([...OUTCOMES.keys()]),
    ...(written.value === 'fails' ? { remedy: 'put `not` before the condition' } : meant(written.value, OUTCOMES.keys())),
  });
  return undefined;
}
