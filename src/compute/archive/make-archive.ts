/** `notes/<slug>/<slug>.zip`: a published note with its data, and all that it takes to build its pages again in an empty checkout. */

import type { ContentFile } from '../../register/register.ts';
import type { ArchiveOrigin } from '../../register/sealed/archive-origins.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import { citation } from '../cite/citation.ts';
import { plainCitation } from '../cite/plain.ts';
import { comparisonJson } from '../comparison/comparison-json.ts';
import { linksWithin } from '../contents/dead-links.ts';
import { deviceJson } from '../contents/device-figures.ts';
import { type ComputedNote, comparisonPath, type ShownPicture, type SiteContents } from '../contents/site-contents.ts';
import { DESCRIPTION } from '../data/names.ts';
import type { Archive } from '../models/note.ts';
import { isInvented, notePath } from '../pages/note.ts';
import { noteReference } from '../pages/references.ts';
import { stateOf } from '../published-state/protect.ts';
import { sealed, statePath } from '../published-state/read-states.ts';
import { METHODS } from '../published-state/sources.ts';
import { COPY_FOLDER, namedCopies } from '../record-copies/copy.ts';
import { digest, digestOf } from '../store/digest.ts';
import { jsonText, publishLedger } from '../store/json-text.ts';
import { memo } from '../store/memo.ts';
import type { Store } from '../store/store.ts';
import { declarations, type Texts } from './declarations.ts';
import { licencesText } from './licences.ts';
import { archivePackage } from './package.ts';
import { AS_PUBLISHED, type PlacedFile, placedData } from './placed-data.ts';
import { type Maker, rebuildText } from './rebuild-text.ts';
import { type ArchiveScope, archiveScope } from './scope.ts';
import { writeZip } from './zip.ts';

export interface ArchiveSources {
  readonly store: Store;
  readonly parts: SiteContents;
  readonly texts: Texts;
  readonly copies: readonly ContentFile[];
  readonly states: ReadonlyMap<string, PublishedState>;
  readonly maker: Maker;
}

/** A file of an archive: its text, or bytes that are in the store. */
type Entry = { readonly text: string } | { readonly blob: string };

/** The archive of a note, made where what goes in differs from last time. */
export function archiveOf(sources: ArchiveSources, note: ComputedNote): Archive {
  const entries = entriesOf(sources, note);
  const digests = [...entries].map(([path, entry]) => [path, 'blob' in entry ? entry.blob : digest(entry.text)]);
  return memo(sources.store, digestOf(['archive', sources.maker.code, note.note.date, digests]), (store) => {
    const files = new Map([...entries].map(([path, entry]) => [path, () => bytesOf(store, entry)]));
    const { blob, bytes } = store.keepPieces((append) => writeZip(files, note.note.date, append));
    return { path: `${notePath(note)}${note.note.id}.zip`, sha256: blob, bytes };
  });
}

function bytesOf(store: Store, entry: Entry): Uint8Array {
  return 'text' in entry ? Buffer.from(entry.text) : store.bytes(entry.blob);
}

function entriesOf(sources: ArchiveSources, note: ComputedNote): Map<string, Entry> {
  const { store, parts } = sources;
  const scope = archiveScope(parts, note);
  const placed = placedData(parts, scope);
  const computed = computedTexts(sources, scope);
  const figures = placed.flatMap(({ file, path }) => (file.role === 'figures' && path !== null ? [path] : []));
  const texts: [string, string][] = [
    ...declarations(parts, scope, placed, sources.texts),
    ...statesOf(sources, scope),
    [`content/archives/${note.note.id}.json`, jsonText(originOf(sources, scope))],
    ...computed,
    ['LICENCES.txt', licencesText(scope)],
    [
      'REBUILD.txt',
      rebuildText({
        scope,
        placed,
        citation: plainCitation(noteReference(parts, note)),
        invented: scope.devices.some((id) => isInvented(parts, id)),
        maker: sources.maker,
        pictures: picturesIn(scope.notes).map(({ path, sha256, whole }) => ({ path, original: sha256, published: whole.blob })),
        computed: [...figures, ...computed.map(([path]) => path).filter((path) => /(?:figures|ledger)\.json$/.test(path))],
      }),
    ],
    ...packageOf(sources, scope, placed),
  ];
  return new Map<string, Entry>([
    ...placed.flatMap(({ file, path }): [string, Entry][] => (path === null ? [] : [[path, { blob: file.sha256 }]])),
    ...picturesIn(scope.notes).map(({ path, whole }): [string, Entry] => [`data/${path}`, { blob: whole.blob }]),
    ...copiesOf(sources, scope).map(({ path, text }): [string, Entry] => [path, { blob: store.keep(text) }]),
    ...texts.map(([path, text]): [string, Entry] => [path, { text }]),
  ]);
}

/** What is computed from more than one run, and how the note is cited. */
function computedTexts({ parts }: ArchiveSources, scope: ArchiveScope): [string, string][] {
  return [
    ...scope.comparisons.map((each): [string, string] => [
      `${AS_PUBLISHED}${comparisonPath(each.comparison.id)}figures.json`,
      jsonText(comparisonJson(each)),
    ]),
    ...scope.devices.map((id): [string, string] => [`${AS_PUBLISHED}devices/${id}/figures.json`, jsonText(deviceJson(scope, id))]),
    ...scope.notes.map((each): [string, string] => [
      `${AS_PUBLISHED}${notePath(each)}ledger.json`,
      jsonText(publishLedger(each.written)),
    ]),
    ...scope.notes.slice(0, 1).flatMap((each) => {
      const path = notePath(each);
      return citation(noteReference(parts, each), path).files.map(([file, text]): [string, string] => [AS_PUBLISHED + file, text]);
    }),
  ];
}

/**
 * What was published, so that the words are held and recorded scripts say what they said. Of its sources only those stay that the site
 * names too: digests of the author's own files would prove what was left out of them.
 */
function statesOf({ states }: ArchiveSources, { notes }: ArchiveScope): [string, string][] {
  return notes.flatMap(({ note }): [string, string][] => {
    const state = stateOf(note, states);
    if (state === undefined) return [];
    const sources = state.sources.filter(({ name }) => name.startsWith('data/') || name === METHODS);
    return [[statePath(state.of), sealed({ ...state, sources })]];
  });
}

function copiesOf({ copies }: ArchiveSources, { comparisons }: ArchiveScope): ContentFile[] {
  const ids = new Set(comparisons.map(({ comparison }) => comparison.id));
  const named = namedCopies(copies).filter(({ comparison }) => ids.has(comparison));
  const files = new Set(named.map(({ path }) => `${COPY_FOLDER}${path.split('/')[1]}.json`));
  return copies.filter(({ path }) => files.has(path));
}

function originOf({ parts }: ArchiveSources, { notes }: ArchiveScope): ArchiveOrigin {
  const [{ note }] = notes as [ComputedNote];
  const pictures = picturesIn(notes).map(({ path, sha256, whole }) => ({ path, original: sha256, published: whole.blob }));
  const held = pictures.length > 0 ? { pictures } : {};
  return { format: 1, of: `notes/${note.id}`, site: parts.site.address, links: linksWithin(notes), ...held };
}

/** The pictures of notes and scripts, each file once. */
function picturesIn(notes: readonly ComputedNote[]): ShownPicture[] {
  const shown = notes.flatMap(({ pictures }) => pictures.filter((picture) => picture !== null));
  return [...new Map(shown.map((picture) => [picture.path, picture])).values()];
}

function packageOf({ store, parts }: ArchiveSources, scope: ArchiveScope, placed: readonly PlacedFile[]): [string, string][] {
  const made = archivePackage(store, parts, scope, placed);
  return made === null ? [] : [[DESCRIPTION, jsonText(made)]];
}
