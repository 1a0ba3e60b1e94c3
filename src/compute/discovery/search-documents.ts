/** What the search of a site finds: taken from the models of its pages, so that it knows nothing that no page shows. */
import type { Document } from '../../search/document.ts';
import type { Choice } from '../models/discovery.ts';
import type {
  ComparisonModel,
  ConditionRow,
  DeviceModel,
  MethodModel,
  NoteModel,
  PageModel,
  RunModel,
  ScriptModel,
} from '../results.ts';
import { plainText } from './plain-text.ts';

/** The kinds of what can be found, in the order of the results. */
export const KINDS: readonly Choice[] = [
  { id: 'notes', title: 'Notes' },
  { id: 'scripts', title: 'Scripts' },
  { id: 'runs', title: 'Runs' },
  { id: 'devices', title: 'Devices' },
  { id: 'comparisons', title: 'Comparisons' },
  { id: 'figures', title: 'Figures' },
  { id: 'method', title: 'Method' },
  { id: 'guide', title: "User's guide" },
  { id: 'about', title: 'About' },
];

/** One document for each note, script, run, device and comparison that has a page, each figure of the method page and each of its chapters. */
export function searchDocuments(models: readonly (readonly [path: string, model: PageModel])[]): Document[] {
  return models.flatMap(([path, model]) => documentsOf(path, model));
}

/** For each kind of page the documents that its model gives. */
const DOCUMENTS: { readonly [K in PageModel['kind']]: (path: string, model: Extract<PageModel, { kind: K }>) => Document[] } = {
  note: (path, model) => [pageDocument('notes', path, model.title, noteText(model))],
  script: (path, model) => [pageDocument('scripts', path, model.title, scriptText(model))],
  run: (path, model) => [pageDocument('runs', path, model.title, runText(model))],
  device: (path, model) => [pageDocument('devices', path, model.title, deviceText(model))],
  comparison: (path, model) => [pageDocument('comparisons', path, model.title, comparisonText(model))],
  method: methodDocuments,
  // Its reference lists what stands elsewhere in the site, and would be found by every word.
  guide: (path, { title, html }) => (path.includes('/reference-') ? [] : [pageDocument('guide', path, title, plainText(html))]),
  about: (path, { title, html }) => [pageDocument('about', path, title, plainText(html))],
  // Lists, tools, and other views of what is found already.
  accuracy: none,
  compare: none,
  home: none,
  ledger: none,
  'not-found': none,
  prompter: none,
  'record-copies': none,
  'record-copy': none,
  runs: none,
  search: none,
  verify: none,
};

function none(): Document[] {
  return [];
}

function documentsOf<K extends PageModel['kind']>(path: string, model: Extract<PageModel, { kind: K }>): Document[] {
  return DOCUMENTS[model.kind as K](path, model);
}

function pageDocument(kind: string, path: string, title: string, text: string): Document {
  return { kind, name: path.split('/')[1] ?? '', title, path, text };
}

function noteText({ summary, devices, highlights, pieces, disclosure }: NoteModel): string {
  const shown = highlights.map((each) => [each.label, each.run, each.shown].filter((part) => part !== '').join(' '));
  const words = pieces.map((piece) => (typeof piece === 'string' ? plainText(piece) : piece.title));
  return sentences([summary, titles(devices), shown.join(', '), ...words, disclosure]);
}

/** As the script's page has it: held numbers in their spoken form. */
function scriptText({ summary, devices, blocks }: ScriptModel): string {
  const words = blocks.map(({ pieces }) =>
    plainText(pieces.map((piece) => (typeof piece === 'string' ? piece : 'said' in piece ? piece.said : piece.title)).join('')),
  );
  return sentences([summary, titles(devices), ...words]);
}

/** What it came to and its figures as printed come first: runs are looked for by both. */
function runText({ outcome, groups, device, specimen, date, setting, conditions, body }: RunModel): string {
  const figures = groups
    .flatMap((group) => group.figures)
    .filter(({ address, absent }) => absent === undefined && !address.includes('.'));
  return sentences([
    outcome,
    `${device.title}, specimen ${specimen}, ${date}`,
    rows(setting),
    plainText(body),
    ...figures.map(({ label, shown }) => `${label} ${shown}`),
    rows(conditions),
  ]);
}

function deviceText({ maker, body, ratings, specimens, attempts }: DeviceModel): string {
  const pieces = specimens.map(({ alias }) => `specimen ${alias}`);
  return sentences([maker, plainText(body), rows(ratings), pieces.join(', '), attempts.map(({ title }) => title).join(', ')]);
}

function comparisonText({ devices, body, runs, fairness }: ComparisonModel): string {
  const named = runs.map(({ title, setting }) => [title, setting].filter((part) => part !== '').join(', '));
  return sentences([titles(devices), plainText(body), named.join('; '), fairness.lead]);
}

function methodDocuments(path: string, { subjects, chapters }: MethodModel): Document[] {
  const figures = subjects.flatMap(({ entries }) =>
    entries.map(({ name, label, definition, unit }) => ({
      kind: 'figures',
      name,
      title: label,
      path: `${path}#${name}`,
      text: sentences([definition, `Unit: ${unit}`]),
    })),
  );
  const method = chapters.map(({ id, title, html }) => {
    return { kind: 'method', name: id, title, path: `${path}#${id}`, text: plainText(html) };
  });
  return [...figures, ...method];
}

function rows(conditions: readonly ConditionRow[]): string {
  return conditions.map(({ label, text }) => `${label} ${text}`).join(', ');
}

function titles(links: readonly { readonly title: string }[]): string {
  return links.map(({ title }) => title).join(', ');
}

/** Parts that say something, each with a full stop, a blank between. */
function sentences(parts: readonly string[]): string {
  return parts
    .filter((part) => part !== '')
    .map((part) => (/[.!?:…]$/.test(part) ? part : `${part}.`))
    .join(' ');
}
