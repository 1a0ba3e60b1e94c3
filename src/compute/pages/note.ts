/** The model of a note's page. */

import { definitionOf } from '../../figures/catalogue.ts';
import { RISKS_IN_BRIEF } from '../../figures/cautions/risks.ts';
import { attemptCautions, cautions, type MergedCaution, mergeCautions } from '../../figures/cautions.ts';
import { type Figure, isPresent } from '../../figures/figure.ts';
import { triedFacts } from '../../figures/stability/tried.ts';
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import type { Note, Quoted } from '../../register/register.ts';
import { heldInWords } from '../../words/expression/in-words.ts';
import { fragmentOf } from '../../words/page/fragment.ts';
import type { HeldBy, LedgerEntry, PlainWords } from '../../words/written.ts';
import { citation } from '../cite/citation.ts';
import { commonConditions } from '../contents/common-conditions.ts';
import { conditionRows, fromText, runLink, settingText, uncertaintyText } from '../contents/figure-text.ts';
import { newestFirst } from '../contents/note-order.ts';
import { devicesOf, notePath } from '../contents/note-path.ts';
import { quotedId, shownQuoted } from '../contents/quoted.ts';
import { sharePicture } from '../contents/share-picture.ts';
import {
  attemptsPath,
  type ComputedAttempts,
  type ComputedComparison,
  type ComputedNote,
  type ComputedRun,
  comparisonPath,
  pagePlot,
  type SiteContents,
} from '../contents/site-contents.ts';
import { sizeText } from '../data/names.ts';
import { linkedNote } from '../linked-data/note.ts';
import type { Archive } from '../models/note.ts';
import type { ShownQuoted } from '../models/shared.ts';
import type { FrontWords, HeldNote, Highlight, Ledgers, Link, Marks, NoteModel, PagePlot, PrintedFront } from '../results.ts';
import { leadOf } from '../steps/plots/pictured-plots.ts';
import { correctedNumbers, correctionsOf, markCorrected } from './corrections.ts';
import { headingsOf, testedLine } from './note-head.ts';
import { illustrated } from './picture-html.ts';
import { noteReference } from './references.ts';

export { devicesOf, notePath };

/** All that the page of a note prints. */
export function noteModel(parts: SiteContents, computed: ComputedNote, archive: Archive | null): NoteModel {
  const { note, written } = computed;
  const runs = reachedRuns(parts, computed);
  const shared = commonConditions(runs.map(({ computed: { run } }) => run.conditions));
  const tried = [...(note.attempts?.values() ?? [])].map((id) => parts.attempts.get(id)!);
  const entries = written.entries.filter((entry) => entry.kind !== 'highlight');
  const corrected = correctedNumbers(parts, computed);
  const warned = mergedCautions(parts, computed);
  const pieces = piecesOf(computed, corrected, parts.site.base);
  return {
    kind: 'note',
    tested: testedLine(
      runs.map(({ computed: { run } }) => run),
      shared.common,
    ),
    beware: warned.map(({ id }) => RISKS_IN_BRIEF[id]).join(', '),
    contents: headingsOf(pieces),
    lead: leadPlot(computed),
    share: sharePicture(parts, notePath(computed)),
    ...neighbours(parts, computed),
    title: note.title,
    date: note.date,
    summary: note.summary ?? '',
    front: printedFront(computed, corrected),
    marks: marksOf(parts, computed),
    devices: deviceLinks(parts, computed),
    runs: runs.map(({ alias, computed: { run } }) => ({
      link: runLink(run),
      alias,
      setting: settingText(run),
      conditions: conditionRows(shared.departures(run.conditions)),
    })),
    shared: conditionRows(shared.common),
    comparisons: comparisonLinks(parts, [...note.comparisons.values()]),
    highlights: highlights(parts, computed),
    pieces,
    heldNotes: entries.map((entry, index) => heldNote(parts, computed, entry, index + 1)),
    cautions: warned,
    disclosure: note.disclosure ?? '',
    scripts: scriptsFor(parts, computed).map((script) => ({ title: script.note.title, path: notePath(script) })),
    ...correctionsOf(parts, computed),
    ledger: ledgersOf(computed),
    quoted: quotedIn(parts, note),
    reproduce: [
      ...runs.map(({ computed: { run } }) => reproduced(parts, `runs/${run.id}`, runLink(run))),
      ...tried.map(({ attempts }) => {
        return reproduced(parts, `attempts/${attempts.id}`, { title: attempts.title, path: attemptsPath(attempts) });
      }),
    ],
    archive: archive && { path: archive.path, name: `${note.id}.zip`, size: sizeText(archive.bytes), sha256: archive.sha256 },
    citation: citation(noteReference(parts, computed), notePath(computed)).shown,
    licence: note.licence ?? null,
    authors: note.authors ?? [],
    linked: linkedNote(parts, computed, archive),
  };
}

/** Title, summary and disclosure with their held numbers, and signs where those were corrected. */
export function printedFront({ note, written }: ComputedNote, corrected: ReadonlyMap<number, string>): PrintedFront {
  const { front = {}, entries } = written;
  const shown = (words: PlainWords): FrontWords =>
    words.map((piece) =>
      typeof piece === 'string'
        ? piece
        : {
            number: piece,
            id: entries[piece - 1]?.id ?? '',
            said: entries[piece - 1]?.shown ?? '',
            corrected: corrected.get(piece) ?? '',
          },
    );
  return {
    title: shown(front.title ?? [note.title]),
    summary: shown(front.summary ?? []),
    disclosure: shown(front.disclosure ?? []),
  };
}

/** The runs that a note reaches, by its own aliases or through a comparison, each once. */
function reachedRuns(parts: SiteContents, { note, reaches }: ComputedNote): { alias: string; computed: ComputedRun }[] {
  const aliases = new Map([...note.runs].map(([alias, id]) => [id, alias]));
  return reaches.map((id) => ({ alias: aliases.get(id) ?? '', computed: parts.runs.get(id)! }));
}

/** Comparisons of the site by id, each once. */
function comparisonLinks(parts: SiteContents, ids: readonly string[]): Link[] {
  return unique(ids).map((id) => ({ title: parts.comparisons.get(id)!.comparison.title, path: comparisonPath(id) }));
}

/** The article in its order, without the plot at its head; `corrected` are ids of corrections by number. */
export function piecesOf(computed: ComputedNote, corrected: ReadonlyMap<number, string>, base: string): NoteModel['pieces'] {
  const lead = leadOf(computed.written);
  return computed.written.pieces.flatMap((piece) => (piece === lead ? [] : pieceOf(computed, piece, corrected, base)));
}

/** HTML as it is; a plot's place gets the plot. One that could not be drawn leaves nothing: its problem stops the build. */
function pieceOf(
  computed: ComputedNote,
  piece: string | number,
  corrected: ReadonlyMap<number, string>,
  base: string,
): NoteModel['pieces'] {
  // Below a chart at the head, no picture stands within the first window.
  if (typeof piece === 'string')
    return [illustrated(markCorrected(piece, corrected), computed, base, leadOf(computed.written) === undefined)];
  const drawn = computed.plots[piece];
  return drawn === null || drawn === undefined ? [] : [pagePlot(drawn, notePath(computed))];
}

/** The chart at the head of a note; null where it draws nothing. */
export function leadPlot(computed: ComputedNote): PagePlot | null {
  const lead = leadOf(computed.written);
  const drawn = lead === undefined ? null : computed.plots[lead];
  return drawn ? pagePlot(drawn, notePath(computed)) : null;
}

/** The notes published before and after one. */
function neighbours(parts: SiteContents, computed: ComputedNote): Pick<NoteModel, 'before' | 'after'> {
  const notes = parts.notes.filter(({ note }) => note.kind === 'note').toSorted(newestFirst);
  const at = notes.indexOf(computed);
  const linkAt = (index: number) =>
    notes[index] === undefined ? null : { title: notes[index].note.title, path: notePath(notes[index]) };
  return { before: linkAt(at + 1), after: linkAt(at - 1) };
}

export function marksOf(parts: SiteContents, computed: ComputedNote): Marks {
  return { invented: devicesOf(parts, computed).some((id) => isInvented(parts, id)), status: computed.note.status };
}

/** What the runs and attempts that a note reaches call for: what was done, by run where there are several, and the risk once. */
export function cautionsOf(parts: SiteContents, computed: ComputedNote): NoteModel['cautions'] {
  return mergedCautions(parts, computed);
}

function mergedCautions(parts: SiteContents, computed: ComputedNote): MergedCaution[] {
  const runs = reachedRuns(parts, computed);
  const tried = [...(computed.note.attempts?.values() ?? [])].map((id) => parts.attempts.get(id)!);
  const named = (done: string, run: string) => (runs.length > 1 ? done.replace(/\.$/, ` (${run}).`) : done);
  return mergeCautions([
    ...runs.flatMap(({ alias, computed: { run, derived } }) =>
      cautions(run.context, derived).map((caution) => ({
        ...caution,
        done: named(caution.done, alias === '' ? run.title : alias),
      })),
    ),
    ...tried.flatMap(({ attempts, ladder }) => attemptCautions(ladder, parts.register.devices.get(attempts.device)?.ratedClock)),
  ]);
}

/** The scripts of the site that speak for a note, in the order of their ids. */
export function scriptsFor(parts: SiteContents, { note }: ComputedNote): ComputedNote[] {
  return parts.notes.filter((other) => other.note.kind === 'script' && other.note.note === note.id);
}

export function ledgersOf(computed: ComputedNote): Ledgers {
  return { page: `${notePath(computed)}ledger/`, json: `${notePath(computed)}ledger.json` };
}

/** The pages of these devices. */
export function deviceLinks(parts: SiteContents, computed: ComputedNote): Link[] {
  return devicesOf(parts, computed).map((id) => ({ title: parts.register.devices.get(id)!.title, path: `devices/${id}/` }));
}

export function isInvented(parts: SiteContents, device: string): boolean {
  return parts.register.devices.get(device)?.invented ?? false;
}

/** A note's highlights, printed as on its own page. */
export function highlights(parts: SiteContents, { note, written }: ComputedNote): Highlight[] {
  return written.entries
    .filter((entry) => entry.kind === 'highlight')
    .map((entry) => {
      const runs = unique(entry.held.map((held) => titleOf(parts, note, held)));
      const labels = unique(entry.held.map((held) => heldInWords(held, figureOf(parts, note, held)?.of)));
      return { label: labels.join(', '), shown: entry.shown, uncertainty: entry.uncertainty, run: runs.join(', ') };
    });
}

function titleOf(parts: SiteContents, note: Note, { alias, subject }: HeldBy): string {
  if (note.comparisons.has(alias)) return parts.comparisons.get(subject)!.comparison.title;
  if (note.attempts?.has(alias)) return parts.attempts.get(subject)!.attempts.title;
  if (note.quoted?.has(alias)) return parts.register.quoted.get(subject)!.title;
  return parts.runs.get(subject)?.run.title ?? alias;
}

function figureOf(parts: SiteContents, note: Note, { alias, subject, address }: HeldBy): Figure | undefined {
  if (note.comparisons.has(alias)) return parts.comparisons.get(subject)?.figures.get(address);
  if (note.attempts?.has(alias)) return parts.attempts.get(subject)?.figures.get(address);
  if (note.quoted?.has(alias)) return parts.register.quoted.get(subject)?.figures.get(address);
  return parts.runs.get(subject)?.derived.figures.get(address);
}

/** What holds one number of a note or script. */
export function heldNote(parts: SiteContents, computedNote: ComputedNote, entry: LedgerEntry, number: number): HeldNote {
  const { note } = computedNote;
  const figures = entry.held.flatMap((held) => {
    if (note.comparisons.has(held.alias)) return heldByComparison(parts.comparisons.get(held.subject)!, held);
    if (note.attempts?.has(held.alias)) return heldByAttempts(parts.attempts.get(held.subject)!, held);
    if (note.quoted?.has(held.alias)) return heldByQuoted(parts.register.quoted.get(held.subject)!, held, notePath(computedNote));
    const computed = parts.runs.get(held.subject);
    return computed === undefined || isGone(computed, held) ? [] : [heldFigure(computed, held)];
  });
  const { id, shown, expression, uncertainty, rests } = entry;
  return { number, id, shown, expression, uncertainty, ...(rests === undefined ? {} : { rests }), figures };
}

/** What could have been told stands beside the figure that it is of. */
function standingAt(address: string, { of }: Figure): string {
  return of?.figure === undefined ? address : address.slice(address.indexOf('.') + 1);
}

function heldByComparison({ comparison, figures }: ComputedComparison, held: HeldBy): HeldNote['figures'] {
  const figure = figures.get(held.address);
  if (figure === undefined || !isPresent(figure)) return [];
  const label = heldInWords(held, figure.of);
  return [
    {
      label,
      run: { title: comparison.title, path: `${comparisonPath(comparison.id)}#${fragmentOf(standingAt(held.address, figure))}` },
      method: { title: label, path: `method/#${figure.name}` },
      shown: printQuantity(figure.quantity).text,
      uncertainty: uncertaintyText(figure),
      file: comparison.file,
      from: fromText(figure.from),
      inferred: figure.inferred ?? [],
    },
  ];
}

/** What a note or script quotes, in its own order. */
export function quotedIn({ register }: Pick<SiteContents, 'register'>, note: Note): ShownQuoted[] {
  return [...(note.quoted?.values() ?? [])].map((id) => shownQuoted(register.quoted.get(id)!));
}

/** Somebody else's figure: it leads to where it was published. */
function heldByQuoted({ source, conditions, figures, ...quoted }: Quoted, held: HeldBy, page: string): HeldNote['figures'] {
  const figure = figures.get(held.address);
  if (figure === undefined) return [];
  const label = heldInWords(held, figure.of);
  const stated = [quoted.device ?? '', ...conditions.map(({ name, text }) => `${name.replaceAll('_', ' ')} ${text}`)];
  return [
    {
      label,
      run: { title: `${quoted.title}, quoted from ${source.author}`, path: `${page}#${quotedId(quoted.id)}` },
      method: { title: label, path: `method/#${figure.name}` },
      shown: printQuantity(figure.quantity).text,
      uncertainty: figure.quantity.parts === null ? 'the source states no uncertainty' : uncertaintyText(figure),
      file: source.address,
      from: [`accessed ${source.accessed}`, ...stated.filter((text) => text !== '')].join('; '),
      inferred: [],
    },
  ];
}

function heldByAttempts({ attempts, ladder, figures }: ComputedAttempts, held: HeldBy): HeldNote['figures'] {
  const counted = triedFacts(ladder).get(held.address);
  if (counted !== undefined) {
    return [
      {
        label: heldInWords(held, undefined),
        run: { title: attempts.title, path: `${attemptsPath(attempts)}#attempts-${attempts.id}` },
        method: null,
        shown: printQuantity(counted).text,
        uncertainty: '',
        file: ladder.file,
        from: 'rows counted',
        inferred: [],
      },
    ];
  }
  const figure = figures.get(held.address);
  if (figure === undefined || !isPresent(figure)) return [];
  const label = heldInWords(held, figure.of);
  return [
    {
      label,
      run: { title: attempts.title, path: `${attemptsPath(attempts)}#${attempts.id}.${fragmentOf(held.address)}` },
      method: { title: label, path: `method/#${figure.name}` },
      shown: printQuantity(figure.quantity).text,
      uncertainty: typeof figure.of?.basis === 'string' ? figure.of.basis : '',
      file: ladder.file,
      from: fromText(figure.from),
      inferred: [],
    },
  ];
}

/** What a note's numbers of one run were computed from, and what is made from it. */
function reproduced({ data }: SiteContents, subject: string, of: Link): NoteModel['reproduce'][number] {
  const files = data.get(subject) ?? [];
  return { of, files: files.filter(({ source }) => source !== ''), made: files.filter(({ source }) => source === '') };
}

/** A figure that was published, and that the data no longer gives. */
function isGone({ derived }: ComputedRun, { address }: HeldBy): boolean {
  const figure = derived.figures.get(address);
  return figure === undefined ? definitionOf(address.split('.', 1)[0]!) !== undefined : !isPresent(figure);
}

function heldFigure(computed: ComputedRun, held: HeldBy): HeldNote['figures'][number] {
  const { run, derived, summary } = computed;
  const figure = derived.figures.get(held.address);
  const fact = run.facts.get(held.address);
  const label = heldInWords(held, figure?.of);
  const common = {
    label,
    run: runLink(run),
    method: held.figure === undefined ? null : { title: label, path: `method/#${held.figure}` },
  };
  if (figure !== undefined && isPresent(figure)) {
    return {
      ...common,
      run: { title: run.title, path: `${runLink(run).path}#${fragmentOf(held.address)}` },
      shown: printQuantity(figure.quantity).text,
      uncertainty: uncertaintyText(figure),
      file: figure.from.file ?? logPath(summary),
      from: fromText(figure.from),
      inferred: figure.inferred ?? [],
    };
  }
  const stated =
    fact === undefined ? { shown: '', uncertainty: '' } : { shown: printQuantity(fact).text, uncertainty: printUncertainty(fact) };
  const place = run.factPlaces.get(held.address);
  const from = place === undefined ? 'stated, not measured' : `line ${place.line}, stated, not measured`;
  return { ...common, ...stated, file: place?.file ?? run.file, from, inferred: [] };
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts)];
}

/** The first log of a run, which figures name no file for. */
function logPath({ logs: [first] }: ComputedRun['summary']): string {
  return first ? `data/${first.file}` : '';
}
