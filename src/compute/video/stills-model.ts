/** What the pictures of a script show: every cue, plot and table, and its highlights, with the numbers that its page prints. */

import { compareText } from '../../problem.ts';
import { expressionInWords } from '../../words/expression/in-words.ts';
import { fragmentOf } from '../../words/page/fragment.ts';
import { withPictures } from '../../words/page/page-node.ts';
import { plotNamed } from '../../words/script/on-screen.ts';
import type { PlannedBlock } from '../../words/script/plan.ts';
import type { CueBlock, SaidPiece, ScriptTable, ShownBlock } from '../../words/script/script.ts';
import { tokensOf } from '../../words/script/tokens.ts';
import type { LedgerEntry } from '../../words/written.ts';
import { bareAddress } from '../contents/bare-address.ts';
import { notePath } from '../contents/note-path.ts';
import type { ComputedNote, SiteContents } from '../contents/site-contents.ts';
import type { PicturedThing, StillsModel } from '../models/stills.ts';
import { deviceLinks, marksOf } from '../pages/note.ts';
import { scriptFiles } from '../pages/script.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import { commentFile, videoFiles } from './video-files.ts';

/** The model of each script of the site, by its id. */
export function stillsModels(parts: SiteContents): [id: string, model: StillsModel][] {
  return parts.notes
    .filter(({ note, plan }) => note.kind === 'script' && plan !== undefined)
    .map((computed): [string, StillsModel] => [computed.note.id, stillsModel(parts, computed)])
    .sort(([a], [b]) => compareText(a, b));
}

/** The pictures of one script, which has been planned. */
function stillsModel(parts: SiteContents, computed: ComputedNote): StillsModel {
  const { note, plan } = computed;
  const speaksFor = parts.notes.find((other) => other.note.kind === 'note' && other.note.id === note.note);
  const pictures: PicturedThing[] = [];
  let cue = 0;
  let section = note.title;
  for (const planned of plan?.blocks ?? []) {
    const { block } = planned;
    if (block.kind === 'heading') section = planned.tokens.map(({ shown }) => shown).join(' ');
    if (block.kind === 'cue') pictures.push(...cuePictures(parts, computed, speaksFor, { planned, block, cue: ++cue, section }));
    if (block.kind === 'shown') pictures.push(...shownPictures(computed, { planned, block, cue }));
  }
  return {
    title: note.title,
    speaksFor: speaksFor ? [speaksFor.note.file] : [],
    foot: footOf(parts, computed, speaksFor),
    pictures: [...pictures, ...highlightsOf(parts, computed, speaksFor)],
    texts: textsOf(parts, computed),
  };
}

/** The text below the video, subtitles in two forms, and corrections to paste. */
function textsOf(parts: SiteContents, computed: ComputedNote): StillsModel['texts'] {
  const subtitles = scriptFiles(parts, computed).flatMap(([path, text]): [string, string][] =>
    path.endsWith('.vtt') ? [['script.vtt', text]] : [],
  );
  return [...videoFiles(parts, computed), ...subtitles, ...commentFile(parts, computed)];
}

/** Device, date, and the address of what a viewer may read. */
function footOf(parts: SiteContents, computed: ComputedNote, speaksFor: ComputedNote | undefined): StillsModel['foot'] {
  const devices = deviceLinks(parts, computed).map(({ title }) => title);
  const invented = marksOf(parts, computed).invented ? ' (invented)' : '';
  const of = [devices.length === 0 ? '' : `${devices.join(', ')}${invented}`, computed.note.date];
  return {
    of: of.filter((part) => part !== '').join(', '),
    address: bareAddress(parts.site.address, notePath(speaksFor ?? computed)),
  };
}

interface At<Block> {
  readonly planned: PlannedBlock;
  readonly block: Block;
  readonly cue: number;
}

type Found = Pick<PicturedThing, 'name' | 'shows'>;

function placed(
  found: readonly Found[],
  { planned, cue }: Omit<At<unknown>, 'block'>,
  { line, column } = { line: 1, column: 1 },
): PicturedThing[] {
  return found.map(({ name, shows }) => ({ cue, at: planned.from, line, column, name, shows }));
}

/** Plots and tables within a cue, plots that it names, numbers in its words; where it has none of them, the words that viewers are to read. A photograph is a picture already. */
function cuePictures(
  parts: SiteContents,
  computed: ComputedNote,
  speaksFor: ComputedNote | undefined,
  at: At<CueBlock> & { readonly section: string },
): PicturedThing[] {
  const { block, section } = at;
  const others = speaksFor?.plots ?? [];
  const known = [...computed.plots, ...others].filter((plot) => plot !== null);
  const named = block.shows.flatMap((id) => plotNamed(id, known) ?? []);
  const entries = computed.written.entries;
  const found = [
    ...plotsIn(computed, block.html),
    ...named.map(shownPlot),
    ...block.tables.map((table) => shownTable(table, entries)),
    ...numbersIn(parts, computed, block.said),
  ];
  const captions = block.captions.map((caption) => textOf(caption, entries));
  const words = captions.length > 0 || hasPhotograph(block) ? captions : [section];
  const shown = found.length > 0 ? found : words.map((text): Found => ({ name: 'words', shows: { kind: 'words', text } }));
  return placed(shown, at, block);
}

function hasPhotograph({ html }: CueBlock): boolean {
  return html.some((piece) => typeof piece === 'string' && withPictures(piece, () => '') !== piece);
}

function shownPictures(computed: ComputedNote, at: At<ShownBlock>): PicturedThing[] {
  const tables = at.block.tables.map((table) => shownTable(table, computed.written.entries));
  return placed([...plotsIn(computed, at.block.html), ...tables], at);
}

function plotsIn({ plots }: ComputedNote, html: CueBlock['html']): Found[] {
  const within = html.flatMap((piece) => (typeof piece === 'object' && 'plot' in piece ? (plots[piece.plot] ?? []) : []));
  return within.map(shownPlot);
}

function shownPlot({ id, stills }: PlotResult): Found {
  return { name: id, shows: { kind: 'plot', stills } };
}

function shownTable({ caption, rows }: ScriptTable, entries: readonly LedgerEntry[]): Found {
  const [head = [], ...body] = rows.map((row) => row.map((cell) => textOf(cell, entries)));
  return { name: 'table', shows: { kind: 'table', caption: textOf(caption, entries), head, rows: body } };
}

/** Words as they print. */
function textOf(pieces: readonly SaidPiece[], entries: readonly LedgerEntry[]): string {
  return tokensOf(pieces, entries)
    .map(({ shown }) => shown)
    .join(' ')
    .replaceAll(' ,', ',');
}

/** Numbers that print as they are; an author's own words stay in their sentence. */
function numbersIn(parts: SiteContents, computed: ComputedNote, said: readonly SaidPiece[]): Found[] {
  return said.flatMap((piece) => {
    const entry = typeof piece === 'string' ? undefined : computed.written.entries[piece.held - 1];
    return entry?.kind === 'value' ? [shownNumber(parts, computed, entry)] : [];
  });
}

/** The script's own highlights, else those of the note that it speaks for. */
function highlightsOf(parts: SiteContents, computed: ComputedNote, speaksFor: ComputedNote | undefined): PicturedThing[] {
  const own = [computed, ...(speaksFor ? [speaksFor] : [])].map((each) => ({
    each,
    entries: each.written.entries.filter(({ kind }) => kind === 'highlight'),
  }));
  const { each, entries } = own.find((some) => some.entries.length > 0) ?? { each: computed, entries: [] };
  return entries.map((entry) => ({ cue: null, at: 0, line: 1, column: 1, ...shownNumber(parts, each, entry) }));
}

function shownNumber({ register }: SiteContents, { note }: ComputedNote, entry: LedgerEntry): Found {
  const aliases = new Map(entry.held.map(({ alias }) => [alias, alias.replaceAll('_', ' ')]));
  const what = expressionInWords(entry.expression, aliases);
  const runs = [...new Set(entry.held.map(({ alias }) => note.runs.get(alias)))];
  const of = runs.flatMap((id) => (id === undefined ? [] : (register.runs.get(id)?.title ?? [])));
  return {
    name: fragmentOf(entry.expression),
    shows: {
      kind: 'number',
      what: what.slice(0, 1).toUpperCase() + what.slice(1),
      shown: entry.shown,
      uncertainty: entry.uncertainty,
      of: of.join('; '),
    },
  };
}
