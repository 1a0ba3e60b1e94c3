/** The manifest's part of a site: every kind's pages and files joined, what finds them, and links that lead nowhere. */

import type { CheckTable } from '../../figures/checks/results.ts';
import { type ArchiveInputs, archivesOf } from '../archive/site-archives.ts';
import { broughtPages } from '../contents/brought-pages.ts';
import { deadLinks, type Linking } from '../contents/dead-links.ts';
import { notePath } from '../contents/note-path.ts';
import { attemptsPath, type SiteContents } from '../contents/site-contents.ts';
import { offeredFiles } from '../data/offered-data.ts';
import { verifyPart } from '../data/verify-part.ts';
import { pageDates } from '../discovery/dates.ts';
import { discoveryOf } from '../discovery/discovery.ts';
import type { FileBeside } from '../models/data-file.ts';
import { feedModel } from '../pages/corrections.ts';
import { notesFeedModel } from '../pages/notes-feed.ts';
import { movedFiles, movedPages } from '../published-state/redirects.ts';
import { redirectFiles } from '../published-state/state-files.ts';
import type { PrintedCopies } from '../record-copies/print-copies.ts';
import type { FeedModel, Feeds, Manifest } from '../results.ts';
import { stillsModels } from '../video/stills-model.ts';
import { type Computed, contentsOf } from './contents-of.ts';
import { KINDS } from './kinds.ts';
import type { Ground } from './page-kind.ts';

interface Options extends Computed {
  readonly copies: PrintedCopies;
  /** Published values beside ours. */
  readonly accuracy: readonly CheckTable[];
  /** What archives are made of besides. */
  readonly archived: ArchiveInputs;
}

/** Builds and stores the model of every page of the scope, and the files beside them. */
export function assemble(options: Options): Pick<Manifest, 'pages' | 'files' | 'gathered' | 'stills' | 'feed' | 'problems'> {
  const { store, copies, accuracy, scope, held, archived } = options;
  const parts = contentsOf(options);
  const ground: Ground = { store, parts, copies, accuracy, scope, archives: archivesOf(store, parts, archived) };
  const models = KINDS.flatMap((kind) => kind.pages(ground));
  const found = discoveryOf(parts, models);
  models.push(...found.pages);
  const files: FileBeside[] = [...offeredFiles(parts.data), ...KINDS.flatMap((kind) => kind.files?.(ground) ?? [])];
  files.push(...found.files.map(([path, text]) => ({ path, blob: store.keep(text) })));
  const verify = verifyPart(store, parts.data, models, files, (subject) => pageOfData(parts, subject));
  models.push(verify.page);
  files.push(verify.file);
  const dates = pageDates(models);
  const pages = models.map(([path, model]) => ({
    kind: model.kind,
    path,
    blob: store.keep(JSON.stringify(model)),
    ...(dates.has(path) && { date: dates.get(path)! }),
  }));
  const titles = new Map(parts.notes.map((note) => [notePath(note), note.note.title]));
  const redirects = redirectFiles(store, held.redirects, files, (page) => titles.get(page) ?? page);
  const shown = new Set(pages.map(({ path }) => path));
  const moved = movedFiles(
    store,
    movedPages(options.register, (page) => shown.has(page)),
    files,
  );
  const all = [...files, ...redirects, ...moved].map(({ path, blob }) => ({ path, blob }));
  const linking = [...parts.notes, ...notShown(options, parts)];
  const elsewhere = archived.origins.flatMap(({ links }) => links);
  const feed = feedModel(parts);
  return {
    pages,
    files: all,
    problems: deadLinks(linking, { pages, files: all }, elsewhere),
    gathered: Object.fromEntries([...parts.comparisons].map(([id, { record }]) => [id, record])),
    stills: Object.fromEntries(stillsModels(parts).map(([id, model]) => [id, store.keep(JSON.stringify(model))])),
    feed: feed === null ? null : store.keep(JSON.stringify(feedsOf(parts, feed))),
  };
}

function feedsOf(parts: SiteContents, corrections: FeedModel): Feeds {
  return { corrections, notes: notesFeedModel(parts, corrections.updated) };
}

/** Drafts and what is held back, which a site does not show: their links are judged too, so that their publication surprises nobody. */
function notShown({ held }: Options, parts: SiteContents): Linking[] {
  const shown = new Set(parts.notes.map(({ note }) => note.file));
  const others = held.notes.outcomes.filter(({ note }) => note.status !== 'published' && !shown.has(note.file));
  return others.map((outcome) => {
    const { note, written } = outcome;
    return { note, written, brings: [`${note.kind}s/${note.id}/`, ...broughtPages(outcome, parts.register)] };
  });
}

/** Attempts stand on the page of their device. */
function pageOfData({ attempts }: SiteContents, subject: string): string {
  const tried = attempts.get(subject.replace(/^attempts\//, ''));
  return tried && subject.startsWith('attempts/') ? attemptsPath(tried.attempts) : `${subject}/`;
}
