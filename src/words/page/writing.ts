/** What the steps of writing one text share: its source, its subjects, and what they gather. */
import type { Nodes } from 'mdast';
import { compareProblems, type Place, type Problem } from '../../problem.ts';
import type { StatedCorrection } from '../../register/register.ts';
import type { PlotRequest } from '../../register/requests.ts';
import type { Subjects } from '../expression/address.ts';
import type { Span } from '../expression/expression-tree.ts';
import { locate, type TextProblem } from '../expression/text-problem.ts';
import type { StatedCue } from '../script/script.ts';
import type { AbsentEntry, DraftEntry, PageLink, PictureRequest } from '../written.ts';
import type { Recorded } from './recorded-words.ts';

export interface Writing {
  readonly file: string;
  /** What was parsed: offsets of the tree are into it. */
  readonly source: string;
  /** Added to a line of the tree: 0 for a whole file. */
  readonly lineShift: number;
  readonly kind: 'note' | 'script' | 'prose';
  readonly subjects: Subjects;
  /** Offsets at which lines begin. */
  readonly lines: readonly number[];
  readonly problems: Problem[];
  /** Entries in the order found; the page numbers them in the order printed. */
  readonly drafts: DraftEntry[];
  /** Numbers that the data does not give. */
  readonly absent: AbsentEntry[];
  readonly plots: PlotRequest[];
  readonly pictures: PictureRequest[];
  /** The cues so far: their times in seconds, null where the author gives none, and the plots that they name. */
  readonly cues: StatedCue[];
  /** Links that lead to other pages of the site. */
  readonly links: PageLink[];
  /** Of a published script: what was said. */
  readonly recorded: readonly Recorded[];
  /** Of a note: which words stand in the place of published ones that no longer hold. */
  readonly corrections: readonly StatedCorrection[];
  /** Problems that what was recorded stands in for. */
  readonly unborne: Problem[];
  /** Ids of plots and tables, unique on the page. */
  readonly ids: Set<string>;
  /** Of a value of the front matter: where each of its characters stands in the whole file. */
  readonly within?: { readonly outer: Writing; readonly offsets: readonly number[] };
}

/** A fresh writing. A byte-order mark is no part of the text. */
export function beginWriting(
  about: Pick<Writing, 'file' | 'source' | 'lineShift' | 'kind' | 'subjects'>,
  recorded: readonly Recorded[] = [],
  corrections: readonly StatedCorrection[] = [],
): Writing {
  const source = about.source.replace(/^\uFEFF/, '');
  return {
    ...about,
    source,
    lines: lineStarts(source),
    recorded,
    corrections,
    unborne: [],
    problems: [],
    drafts: [],
    absent: [],
    plots: [],
    pictures: [],
    ids: new Set(),
    cues: [],
    links: [],
  };
}

function lineStarts(source: string): number[] {
  const starts = [0];
  for (const match of source.matchAll(/\r\n|\n|\r/g)) starts.push(match.index + match[0].length);
  return starts;
}

/** The place of an offset. */
export function placeAt({ file, lines, lineShift, within }: Writing, offset: number): Place {
  if (within) return placeAt(within.outer, within.offsets[Math.min(offset, within.offsets.length - 1)] ?? 0);
  let low = 0;
  let high = lines.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((lines[middle] as number) <= offset) low = middle;
    else high = middle;
  }
  return { file, line: low + 1 + lineShift, column: offset - (lines[low] as number) + 1 };
}

/** Offsets of a node of the tree. */
export function spanOf(node: Nodes): Span {
  return { start: node.position?.start.offset ?? 0, end: node.position?.end.offset ?? 0 };
}

/** The source of a node. */
export function sliceOf(writing: Writing, node: Nodes): string {
  const { start, end } = spanOf(node);
  return writing.source.slice(start, end).replaceAll('\0', '\uFFFD');
}

/** Reports a problem whose offsets are into the source. */
export function report(writing: Writing, problem: TextProblem): void {
  writing.problems.push(locate({ ...problem, start: 0, end: problem.end - problem.start }, placeAt(writing, problem.start)));
}

/** Reports it as a warning: the page can be published, the author should look. */
export function warn(writing: Writing, problem: TextProblem): void {
  const located = locate({ ...problem, start: 0, end: problem.end - problem.start }, placeAt(writing, problem.start));
  writing.problems.push({ ...located, severity: 'warning' });
}

/** All problems in the order of the file, each once. */
export function problemsInOrder({ problems }: Writing): Problem[] {
  const sorted = problems.toSorted(compareProblems);
  return sorted.filter((problem, index) => index === 0 || compareProblems(problem, sorted[index - 1] as Problem) !== 0);
}
