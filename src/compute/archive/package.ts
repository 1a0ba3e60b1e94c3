/** `datapackage.json` of an archive: the descriptions of its runs' data as one Data Package, with the paths that files have in it. */

import type { SiteContents } from '../contents/site-contents.ts';
import { describeAttempts, resourceName } from '../data/description.ts';
import type { DataFile } from '../models/data-file.ts';
import type { Store } from '../store/store.ts';
import type { PlacedFile } from './placed-data.ts';
import type { ArchiveScope } from './scope.ts';

type Json = Readonly<Record<string, unknown>>;

/** The package; null where no file is offered. */
export function archivePackage(
  store: Store,
  { data, register }: SiteContents,
  scope: ArchiveScope,
  placed: readonly PlacedFile[],
): object | null {
  const runs = [...scope.runs.keys()].flatMap((id) => {
    const description = (data.get(`runs/${id}`) ?? []).find(({ role }) => role === 'description');
    return description === undefined ? [] : [{ of: `runs/${id}`, json: read(store, description) }];
  });
  const resources = [
    ...runs.flatMap(({ of, json }) => (json.resources as Json[]).flatMap((each) => resourceOf(of, each, placed, json.licenses))),
    ...[...scope.attempts].flatMap(([id, { form }]) => {
      const found = placed.find(({ of, path }) => of === `attempts/${id}` && path !== null);
      return found ? [{ ...describeAttempts(found.file, form), name: `attempts-${id}`, path: found.path }] : [];
    }),
  ];
  const [{ note }] = scope.notes as [ArchiveScope['notes'][number]];
  const invented = scope.devices.some((id) => register.devices.get(id)!.invented);
  if (resources.length === 0) return null;
  return {
    profile: 'data-package',
    name: note.id,
    title: note.title,
    ...(note.summary === undefined ? {} : { description: note.summary }),
    ...(invented ? { invented: true, keywords: ['invented data'] } : {}),
    sources: runs.flatMap(({ json }) => json.sources as Json[]),
    runs: runs.map(({ json: { run, title, date, device, specimen, setting, conditions } }) => {
      return { run, title, date, device, specimen, setting, conditions };
    }),
    resources,
  };
}

function read(store: Store, { sha256 }: DataFile): Json {
  return JSON.parse(new TextDecoder().decode(store.bytes(sha256))) as Json;
}

/** A description names a file by its role and log, which is its own within a run alone. */
function resourceOf(of: string, resource: Json, placed: readonly PlacedFile[], licenses: unknown): Json[] {
  const found = placed.find((each) => each.of === of && resourceName(each.file) === resource.name);
  if (!found) return [];
  const path = found.path ?? found.file.elsewhere;
  const name = `${of.replace('runs/', '')}-${resource.name}`;
  return [{ ...resource, name, path, ...(licenses === undefined ? {} : { licenses }) }];
}
