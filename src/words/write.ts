/** The front door of words: a note or script and its subjects → HTML with numbered places for plots, and the ledger. */
import type { Root } from 'hast';
import type { FrontKey, Note } from '../register/register.ts';
import { giveMeaning } from './directives/directives.ts';
import { markSpots } from './directives/mark-spots.ts';
import { reportNearlyOurs } from './directives/nearly-ours.ts';
import { leadPlot } from './directives/place-plot.ts';
import type { Subjects } from './expression/address.ts';
import { frontTexts, plainWords } from './front-words.ts';
import { highlightsOf } from './highlights.ts';
import { finishPictures } from './page/finish-pictures.ts';
import { parseMarkdown, toHast, toHtml } from './page/markdown.ts';
import { linkHeld, numberIds, tablesOf } from './page/number-ids.ts';
import { markPlots, nameHeadings, numberHeld, wrapTables } from './page/number-page.ts';
import { splitAtPlots } from './page/page-node.ts';
import type { Recorded } from './page/recorded-words.ts';
import { sentencesOf } from './page/sentences.ts';
import { asText, withinDepth } from './page/too-deep.ts';
import { beginWriting, problemsInOrder, type Writing } from './page/writing.ts';
import { reportLostFootnotes } from './rules/footnotes.ts';
import { reportHidden } from './rules/hidden-characters.ts';
import { checkLinks } from './rules/links.ts';
import { placePictures } from './rules/pictures.ts';
import { escapeRawHtml } from './rules/raw-html.ts';
import { reportUnheld } from './rules/unheld.ts';
import { scriptBlocks } from './script/blocks.ts';
import type { Written } from './written.ts';

export interface WriteOptions {
  /** Warn of numbers with a unit that nothing holds; a note that refuses them gets errors. */
  readonly unheld?: boolean;
  /** Of a published script: what was said, which stands where its figure is absent now. */
  readonly recorded?: readonly Recorded[];
}

/**
 * Writes a note or script. `subjects` is by alias. Positions count from the start of `note.text`. Never throws on what an author
 * wrote: all that is wrong is a located problem, and the text stands in the HTML as it was.
 */
export function write(note: Note, subjects: Subjects, options: WriteOptions = {}): Written {
  const writing = beginWriting(
    { file: note.file, source: note.text, lineShift: 0, kind: note.kind, subjects },
    options.recorded,
    note.corrections,
  );
  return withinDepth(writing, () => written(note, writing, options)) ?? asWritten(writing);
}

/** The steps, in order. */
function written(note: Note, writing: Writing, options: WriteOptions): Written {
  const tree = parseMarkdown(writing.source, true);
  const front = frontTexts(note, writing);
  const severity = note.unheld === 'refuse' ? 'error' : 'warning';
  for (const text of [...front, { writing, tree }]) {
    reportHidden(text.writing, text.tree);
    reportNearlyOurs(text.writing, text.tree);
  }
  if (options.unheld || severity === 'error') reportUnheld([...front, { writing, tree }], severity);
  reportLostFootnotes(writing, tree);
  checkLinks(writing, tree);
  placePictures(writing, tree);
  for (const text of [...front, { writing, tree }]) giveMeaning(text.writing, text.tree);
  markSpots(writing, tree);
  const lead = leadPlot(writing, note);
  escapeRawHtml(writing, tree);
  const page = toHast(tree);
  const pictures = finishPictures(page, writing.pictures);
  const pages = front.map(({ key, tree: words }) => ({ key, page: toHast(words) }));
  const whole = asRead(page, pages);
  const inText = numberHeld(whole, writing.drafts);
  const sentences = sentencesOf(whole);
  const highlights = highlightsOf(note, writing);
  const tables = tablesOf(whole);
  const within = (index: number) => tables.get(index + 1) ?? sentences[index]?.pattern ?? '';
  const numbers = [...inText, ...highlights].map((entry, index) => ({ ...entry, within: within(index) }));
  const ids = numberIds(numbers, writing.ids);
  linkHeld(whole, ids);
  nameHeadings(page, [...writing.ids, ...ids]);
  wrapTables(page);
  markPlots(page);
  const pieces = splitAtPlots(toHtml(page));
  return {
    pieces,
    plots: writing.plots,
    ...(pictures.length > 0 ? { pictures } : {}),
    ...(lead === null ? {} : { lead }),
    front: Object.fromEntries(pages.map(({ key, page: words }) => [key, plainWords(words)])),
    entries: [...inText, ...highlights].map((entry, index) => ({ id: ids[index]!, ...entry })),
    sentences,
    ...(writing.absent.length > 0 ? { absent: writing.absent } : {}),
    ...(note.kind === 'script' ? { script: scriptBlocks(page, writing.cues) } : {}),
    links: writing.links,
    ...(writing.unborne.length > 0 ? { unborne: writing.unborne } : {}),
    problems: problemsInOrder(writing),
  };
}

/** All in the order in which it is read: title and summary, the text, the disclosure at its foot. */
function asRead(page: Root, pages: readonly { readonly key: FrontKey; readonly page: Root }[]): Root {
  const foot = pages.filter(({ key }) => key === 'disclosure');
  const head = pages.filter(({ key }) => key !== 'disclosure');
  const children = (some: typeof pages) => some.flatMap((each) => each.page.children);
  return { type: 'root', children: [...children(head), ...page.children, ...children(foot)] };
}

/** What is left of a text that could not be read: its words, and the problem. */
function asWritten(writing: Writing): Written {
  return { pieces: [asText(writing)], plots: [], entries: [], problems: problemsInOrder(writing) };
}
