/** The text that stands below a video, in one piece to paste: what it is about, chapters, cautions, addresses, corrections. */
import type { Plan } from '../../words/script/plan.ts';
import { clockTime } from '../../words/script/timeline.ts';
import type { CorrectedTogether } from '../models/corrections.ts';
import type { ShownCaution } from '../models/shared.ts';
import { correctionsAsText } from '../published-state/corrections-text.ts';

export interface VideoTextParts {
  readonly title: string;
  readonly summary: string;
  readonly disclosure: string;
  readonly plan: Pick<Plan, 'sections'>;
  readonly cautions: readonly ShownCaution[];
  /** What readers find where, with whole addresses. */
  readonly links: readonly { readonly what: string; readonly address: string }[];
  /** Newest first. */
  readonly corrections: readonly CorrectedTogether[];
}

/** The text, with its last line ended. */
export function videoText(parts: VideoTextParts): string {
  const { title, summary, disclosure, plan, cautions, links, corrections } = parts;
  const blocks = [
    [title],
    [summary],
    headed('Cautions', cautions.flatMap(cautionLines)),
    headed('Chapters', chaptersOf(plan)),
    headed(
      'Numbers, data and method',
      links.map(({ what, address }) => `${what}: ${address}`),
    ),
    headed('How the specimen was obtained', [disclosure]),
    corrections.length === 0 ? [] : [correctionsAsText(title, corrections).trimEnd()],
  ];
  return `${blocks
    .map((lines) => lines.filter((line) => line !== '').join('\n'))
    .filter((block) => block !== '')
    .join('\n\n')}\n`;
}

/** Corrections as a comment below the video; '' where there are none. */
export function commentText({ title, corrections, links }: Pick<VideoTextParts, 'title' | 'corrections' | 'links'>): string {
  const [page] = links;
  return corrections.length === 0
    ? ''
    : `${correctionsAsText(title, corrections)}${page ? `\n${page.what}: ${page.address}\n` : ''}`;
}

function headed(heading: string, lines: readonly string[]): string[] {
  const told = lines.filter((line) => line !== '');
  return told.length === 0 ? [] : [heading, ...told];
}

/** The risk first, then what was done or found. */
function cautionLines({ done, risk }: ShownCaution): string[] {
  return [`- ${risk} ${done.join(' ')}`.trimEnd()];
}

/** What stands before the first heading. */
const OPENING = 'Opening';

/** Chapters are the sections of the highest rank; the first begins at 0:00. */
function chaptersOf({ sections }: Pick<Plan, 'sections'>): string[] {
  const top = Math.min(...sections.map(({ depth }) => depth));
  const chapters = sections.filter(({ depth, id }) => id === '' || depth === top);
  return chapters.map(({ title, from }, index) => `${clockTime(index === 0 ? 0 : from)} ${title === '' ? OPENING : title}`);
}
