/** What changed in a site since an earlier one. */
import { compareText } from '../../problem.ts';
import { digest } from '../store/digest.ts';
import type { SiteFile } from './site-files.ts';

/** SHA-256 by path. */
export type SiteDigests = Readonly<Record<string, string>>;

export interface Changed {
  readonly added: readonly string[];
  readonly changed: readonly string[];
  readonly gone: readonly string[];
}

export function digestsOf(files: readonly SiteFile[]): SiteDigests {
  return Object.fromEntries(files.map(({ path, bytes }) => [path, digest(bytes)]));
}

/** Paths that are new, that have other bytes, and that are no more, each sorted. */
export function changedSince(before: SiteDigests, now: SiteDigests): Changed {
  const sorted = (paths: string[]) => paths.sort(compareText);
  return {
    added: sorted(Object.keys(now).filter((path) => !Object.hasOwn(before, path))),
    changed: sorted(Object.keys(now).filter((path) => Object.hasOwn(before, path) && before[path] !== now[path])),
    gone: sorted(Object.keys(before).filter((path) => !Object.hasOwn(now, path))),
  };
}
