/** Every published file of data by its digest: what a downloaded copy is held against. */

import type { FileBeside, OfferedData } from '../models/data-file.ts';
import type { Link } from '../results.ts';

/** A file that the site knows by its digest, offered or not. */
export interface KnownFile {
  readonly sha256: string;
  /** In words: "log as it came". */
  readonly what: string;
  readonly name: string;
  /** The page that it belongs to. */
  readonly of: Link;
  /** Null where the file is not offered here. */
  readonly path: string | null;
  readonly elsewhere?: string;
}

/** `digests.json`. */
export interface Digests {
  readonly format: 1;
  readonly digests: Readonly<Record<string, readonly DigestEntry[]>>;
}

/** What a digest is known as. */
export interface DigestEntry {
  readonly what: string;
  /** Title of its page. */
  readonly of: string;
  /** Below the base. */
  readonly page: string;
  /** Below the base; null where the file is not offered. */
  readonly path: string | null;
  readonly elsewhere?: string;
}

/** Runs' and attempts' data first, then what stands beside the pages; `titles` by the path of a page. */
export function knownFiles(
  data: OfferedData,
  files: readonly FileBeside[],
  titles: ReadonlyMap<string, string>,
  pageOf: (subject: string) => string,
): KnownFile[] {
  const link = (path: string): Link => ({ title: titles.get(path) ?? path, path });
  const own = [...data].flatMap(([subject, all]) => {
    const of = link(pageOf(subject));
    return all.map(({ sha256, what, name, path, elsewhere }) => {
      return { sha256, what, name, of, path, ...(elsewhere === undefined ? {} : { elsewhere }) };
    });
  });
  const beside = files.flatMap(({ path, blob, data: what }): KnownFile[] => {
    const folder = path.lastIndexOf('/') + 1;
    return what === undefined ? [] : [{ sha256: blob, what, name: path.slice(folder), of: link(path.slice(0, folder)), path }];
  });
  return [...own, ...beside];
}

/** `digests.json`: digest → the files that have it, in the order of pages. */
export function digestsJson(known: readonly KnownFile[]): Digests {
  const digests: Record<string, DigestEntry[]> = {};
  for (const { sha256, what, of, path, elsewhere } of known) {
    digests[sha256] ??= [];
    digests[sha256].push({ what, of: of.title, page: of.path, path, ...(elsewhere === undefined ? {} : { elsewhere }) });
  }
  const sorted = Object.keys(digests).sort();
  return { format: 1, digests: Object.fromEntries(sorted.map((sha256) => [sha256, digests[sha256]!])) };
}
