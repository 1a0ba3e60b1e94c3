/** Free text of devices, runs and chapters: the same Markdown without held numbers. */
import { CATALOGUE } from '../figures/catalogue.ts';
import type { Problem } from '../problem.ts';
import { giveMeaning } from './directives/directives.ts';
import { reportNearlyOurs } from './directives/nearly-ours.ts';
import { parseMarkdown, toHast, toHtml } from './page/markdown.ts';
import { nameHeadings, wrapTables } from './page/number-page.ts';
import { asText, withinDepth } from './page/too-deep.ts';
import { beginWriting, problemsInOrder, type Writing } from './page/writing.ts';
import { reportLostFootnotes } from './rules/footnotes.ts';
import { reportHidden } from './rules/hidden-characters.ts';
import { checkLinks } from './rules/links.ts';
import { placePictures } from './rules/pictures.ts';
import { escapeRawHtml } from './rules/raw-html.ts';

export interface Prose {
  readonly html: string;
  readonly problems: readonly Problem[];
}

/** Renders Markdown whose first line stands at `place.line` of its file. Our own directives are errors in it: they need a note's runs. */
export function renderProse(markdown: string, place: { readonly file: string; readonly line: number }): Prose {
  const writing = beginWriting({
    file: place.file,
    source: markdown,
    lineShift: place.line - 1,
    kind: 'prose',
    subjects: new Map(),
  });
  const html = withinDepth(writing, () => rendered(writing)) ?? asText(writing);
  return { html, problems: problemsInOrder(writing) };
}

/** Ids that pages of runs, devices and comparisons have of their own besides those of every page: figures, sections. */
const OF_THE_PAGE = [...CATALOGUE.map(({ name }) => name), 'comparisons', 'copies', 'fair', 'logs'];

/** The steps, in order. */
function rendered(writing: Writing): string {
  const tree = parseMarkdown(writing.source, false);
  reportHidden(writing, tree);
  reportNearlyOurs(writing, tree);
  reportLostFootnotes(writing, tree);
  checkLinks(writing, tree);
  placePictures(writing, tree);
  giveMeaning(writing, tree);
  escapeRawHtml(writing, tree);
  const page = toHast(tree);
  nameHeadings(page, OF_THE_PAGE);
  wrapTables(page);
  return toHtml(page);
}
