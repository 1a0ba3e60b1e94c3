/**
 * The cache below `.cache/`: results by key, files by the digest of their bytes. An entry that fails its own digest
 * counts as missing, so that a damaged cache costs time and never correctness.
 */
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { threadId } from 'node:worker_threads';
import { damaged } from './damage.ts';
import { digest } from './digest.ts';
import { openUndamaged } from './undamaged-files.ts';

const DIGEST_LENGTH = 64;

/** Changes with the shape of entries: one of another format counts as missing. */
const ENTRY_FORMAT = 2;

/** What belongs to an entry: blobs and other entries that were stored while it was made. */
export interface Attachments {
  readonly blobs: readonly string[];
  readonly entries: readonly string[];
}

export interface Entry extends Attachments {
  readonly value: unknown;
}

export interface Store {
  /** The value stored under a key, or undefined where there is none that can be trusted. */
  get(key: string): unknown;
  /** The same with what belongs to it; an entry that lacks one of its blobs counts as missing. */
  entry(key: string): Entry | undefined;
  set(key: string, value: unknown, kept?: Attachments): void;
  /** Tells a recording that an entry was used; the store itself keeps no account. */
  note(key: string, kept: Attachments): void;
  /** Stores bytes under their own digest and returns it. */
  keep(bytes: string | Uint8Array): string;
  /** Whether the bytes with that digest are there and undamaged; those that an earlier process found so need not be read again. */
  has(blob: string): boolean;
  /** Tells later processes what `has` found. */
  remember(): void;
  /** The bytes with that digest. Throws where they are missing or damaged: whoever called `compute` then makes them anew. */
  bytes(blob: string): Uint8Array;
  /** Removes every entry and blob that is not named. */
  prune(keys: ReadonlySet<string>, blobs: ReadonlySet<string>): void;
}

/** Opens the cache of a project folder, making it where it is missing. */
export function openStore(root: string): Store {
  const entries = join(root, '.cache', 'entries');
  const blobs = join(root, '.cache', 'blobs');
  mkdirSync(entries, { recursive: true });
  mkdirSync(blobs, { recursive: true });
  const list = join(root, '.cache', 'seen.json');
  const seen = openUndamaged(list);
  const remember = () => {
    const listed = seen.listed();
    if (listed !== undefined) writeWhole(list, listed);
  };
  const has = (blob: string) => seen.undamaged(blob, join(blobs, blob), () => readBlob(join(blobs, blob), blob) !== undefined);
  const whole = (key: string) => {
    const entry = readEntry(join(entries, key));
    return entry?.blobs.every(has) ? entry : undefined;
  };
  return {
    get: (key) => whole(key)?.value,
    entry: whole,
    set: (key, value, kept = { blobs: [], entries: [] }) =>
      writeEntry(join(entries, key), { value, blobs: kept.blobs, entries: kept.entries }),
    note: () => {},
    keep: (bytes) => keepBlob(blobs, bytes),
    has,
    remember,
    bytes: (blob) => storedBytes(root, blob),
    prune: (keys, kept) => {
      removeOthers(entries, keys);
      removeOthers(blobs, kept);
      seen.keepOnly(kept);
      remember();
    },
  };
}

/** Bytes of a project's cache by their digest. Throws where they are missing or damaged. */
export function storedBytes(root: string, blob: string): Uint8Array {
  const bytes = readBlob(blobPath(root, blob), blob);
  if (bytes === undefined) throw damaged(`.cache/blobs/${blob}`);
  return bytes;
}

/** Where the bytes of a digest lie. */
export function blobPath(root: string, blob: string): string {
  return join(root, '.cache', 'blobs', blob);
}

/** Writes a file so that a reader sees the old one or the new one, never a part. */
export function writeWhole(path: string, content: string | Uint8Array): void {
  const beside = `${path}.${process.pid}-${threadId}.part`;
  try {
    writeFileSync(beside, content);
    renameSync(beside, path);
  } finally {
    rmSync(beside, { force: true });
  }
}

function readEntry(path: string): Entry | undefined {
  const content = fileAt(path);
  if (content === undefined) return undefined;
  const payload = content.subarray(DIGEST_LENGTH);
  if (content.toString('latin1', 0, DIGEST_LENGTH) !== digest(payload)) return undefined;
  const entry = deserialize(payload) as (Entry & { readonly format?: number }) | null;
  return entry?.format === ENTRY_FORMAT ? entry : undefined;
}

function writeEntry(path: string, entry: Entry): void {
  const payload = serialize({ format: ENTRY_FORMAT, ...entry });
  writeWhole(path, Buffer.concat([Buffer.from(digest(payload), 'latin1'), payload]));
}

function keepBlob(folder: string, content: string | Uint8Array): string {
  const bytes = typeof content === 'string' ? Buffer.from(content) : content;
  const blob = digest(bytes);
  if (!fileAt(join(folder, blob))?.equals(bytes)) writeWhole(join(folder, blob), bytes);
  return blob;
}

function readBlob(path: string, blob: string): Uint8Array | undefined {
  const bytes = fileAt(path);
  return bytes !== undefined && digest(bytes) === blob ? bytes : undefined;
}

/** The bytes of a file; undefined where there is none that can be read. */
function fileAt(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

function removeOthers(folder: string, kept: ReadonlySet<string>): void {
  for (const name of readdirSync(folder)) {
    if (!kept.has(name)) rmSync(join(folder, name), { force: true, recursive: true });
  }
}
