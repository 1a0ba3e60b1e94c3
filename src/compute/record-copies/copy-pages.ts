/** What record copies bring to a site: their pages, the list of them, the files beside both. */

import { formerIdsOf } from '../../register/sections/former-addresses.ts';
import { gatherRun, methodVersions } from '../comparison/gather.ts';
import { shareFile, sharePicture } from '../contents/share-picture.ts';
import type { ComputedComparison, SiteContents } from '../contents/site-contents.ts';
import type { FileBeside } from '../models/data-file.ts';
import type { Gathered, GatheredRun } from '../models/gathered.ts';
import type { PageModel } from '../results.ts';
import { digestOf } from '../store/digest.ts';
import { jsonText } from '../store/json-text.ts';
import type { Store } from '../store/store.ts';
import { changedSince, type Living } from './changed-since.ts';
import { copyPath } from './copy.ts';
import { copiesIndex, recordCopiesModel, recordCopyModel } from './copy-page.ts';
import { type PrintedCopies, type PrintedCopy, recordOf } from './print-copies.ts';

/** The page of each copy, and the list where there is any. */
export function copyPages(store: Store, { copies }: PrintedCopies, parts: SiteContents): [path: string, model: PageModel][] {
  const runs = runsOf(copies, parts);
  const known = new Map<object, string>();
  const digestOnce = (value: object): string => {
    const digest = known.get(value) ?? digestOf(value);
    known.set(value, digest);
    return digest;
  };
  const pages = copies.map((printed): [string, PageModel] => {
    const living = livingOf(printed, parts, runs);
    const digests = [living.comparison, ...living.runs.values()].map((each) => each && digestOnce(each));
    const inputs = [printed.key, digests, living.methods];
    const since = parts.memo.of('changed since a record copy', inputs, () => changedSince(recordOf(store, printed), living));
    return [copyPath(printed.id), recordCopyModel(printed, living.comparison, since, sharePicture(parts, copyPath(printed.id)))];
  });
  return copies.length === 0 ? [] : [['record-copies/', recordCopiesModel(copies)], ...pages];
}

/** Each copy's own bytes, its figures, the downloads of its plots; and the index for programs, also where it is empty. */
export function copyFiles(store: Store, { copies }: PrintedCopies, parts: Pick<SiteContents, 'shares'>): FileBeside[] {
  const index = { path: 'record-copies/index.json', blob: store.keep(jsonText(copiesIndex(copies))) };
  return [...copies.flatMap(({ id, files }) => [...files, ...shareFile(parts, copyPath(id))]), index];
}

/** Runs that copies hold and the site still shows (law 9), by the id that the copy has for them. */
function runsOf(copies: readonly PrintedCopy[], { register, runs }: SiteContents): ReadonlyMap<string, GatheredRun> {
  const held = new Set(copies.flatMap((copy) => copy.runs.map(({ run }) => run)));
  return new Map(
    [...runs.values()].flatMap((computed) => {
      const { id } = computed.run;
      const names = [id, ...formerIdsOf(computed.run)].filter((name) => held.has(name));
      const gathered = names.length === 0 ? null : gatherRun(register, id, computed);
      return gathered === null ? [] : names.map((name) => [name, gathered] as const);
    }),
  );
}

function livingOf(
  { comparison, runs, methods }: PrintedCopy,
  parts: SiteContents,
  shown: ReadonlyMap<string, GatheredRun>,
): Living {
  const still = runs.flatMap(({ run }) => {
    const found = shown.get(run);
    return found === undefined ? [] : [[run, found] as const];
  });
  return {
    comparison: underFormerIds(comparisonNow(parts, comparison)?.gathered() ?? null, new Map(still)),
    runs: new Map(still),
    methods: methodVersions(new Set(methods)),
  };
}

function comparisonNow({ comparisons }: SiteContents, id: string): ComputedComparison | undefined {
  return comparisons.get(id) ?? [...comparisons.values()].find(({ comparison }) => formerIdsOf(comparison).includes(id));
}

/** A living comparison with each run under the id that the copy has for it. */
function underFormerIds(living: Gathered | null, runs: ReadonlyMap<string, GatheredRun>): Gathered | null {
  const known = new Map([...runs].map(([name, { run }]) => [run, name] as const));
  return living && { ...living, runs: living.runs.map((each) => ({ ...each, run: known.get(each.run) ?? each.run })) };
}
