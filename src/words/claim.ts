/** `:claim[words]{is="condition"}`: keeps the words; the condition must hold on the data. */
import type { Nodes } from 'mdast';
import { reportClaim } from './claim-report.ts';
import { judge } from './condition.ts';
import { heldAnchor, type PageElement } from './page-node.ts';
import { isTextProblem, parseCondition } from './parse-expression.ts';
import type { WrittenDirective } from './read-directive.ts';
import { locate, type TextProblem } from './text-problem.ts';
import { entryOf, holdsNothing, printed } from './value.ts';
import { placeAt, report, spanOf, type Writing } from './writing.ts';

/** The words as a link to what holds them, or null after reporting what is wrong. A claim that is not held is an error, and is kept. */
export function claim(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const words = wordsOf(writing, read, node);
  const is = read.attributes.find(({ name }) => name === 'is');
  if (words === null || !is) return null;
  const place = placeAt(writing, is.valueStart);
  const refuse = (problems: readonly TextProblem[]): null => {
    writing.problems.push(...problems.map((problem) => locate(problem, place)));
    return null;
  };
  const tree = parseCondition(is.value);
  if (isTextProblem(tree)) return refuse([tree]);
  const judgement = judge(tree, writing.subjects);
  if ('problems' in judgement) return refuse(judgement.problems);
  if (judgement.held.length === 0) return refuse([holdsNothing({ start: 0, end: is.value.length })]);
  const start = placeAt(writing, spanOf(node).start);
  if (judgement.verdict !== 'holds') {
    report(writing, { ...reportClaim(words, is.value.trim(), judgement), start: spanOf(node).start, end: read.end });
  }
  const shown = printed((judgement.comparisons[0] as (typeof judgement.comparisons)[number]).left);
  if ('refused' in shown) return null;
  const entry = entryOf('claim', start, read.label?.text ?? '', is.value.trim(), { ...shown, shown: words }, judgement.held);
  writing.drafts.push({ ...entry, verdict: judgement.verdict });
  return heldAnchor(writing.drafts.length - 1, words);
}

/** The words between the brackets as they print: backslash escapes undone, no Markdown in them. */
function wordsOf(writing: Writing, read: WrittenDirective, node: Nodes): string | null {
  const label = read.label;
  if (!label || !('children' in node)) return null;
  const words = label.text.replace(/\\([!-/:-@[-`{-~])/g, '$1').trim();
  if (words === '') {
    report(writing, { rule: 'directive-label', ...label, found: 'a claim without words', expected: 'the words that it is about' });
    return null;
  }
  const marked = node.children.find(({ type }) => type !== 'text');
  if (marked) {
    const found = 'Markdown within the words of a claim';
    report(writing, {
      rule: 'directive-label',
      ...label,
      found,
      expected: 'plain words',
      remedy: 'put the emphasis around the claim, or escape the sign with `\\`',
    });
    return null;
  }
  return words;
}
