/**
 * The cache below `.cache/`: results by key, files by the digest of their bytes. An entry that fails its own digest
 * counts as missing, so that a damaged cache costs time and never correctness.
 */
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { threadId } from 'node:worker_threads';
import { damaged } from './damage.ts';
import { digest } from './digest.ts';
import { fileDigest } from './file-digest.ts';
import { openKnown } from './known-digests.ts';
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
  /** Stores what `write` hands on, piece by piece, so that it need not be in memory whole. */
  keepPieces(write: (append: (piece: Uint8Array) => void) => void): { readonly blob: string; readonly bytes: number };
  /** Whether the bytes with that digest are there and undamaged; those that an earlier process found so need not be read again. */
  has(blob: string): boolean;
  /** SHA-256 of an author's file, which is not read again where it is large and looks as it did. Throws where it cannot be read. */
  fileDigest(path: string): string;
  /** Tells later processes what `has` and `fileDigest` found. */
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
  const [list, listOfData] = listsOf(root);
  const seen = openUndamaged(list);
  const known = openKnown(listOfData);
  const remember = () => {
    writeList(list, seen.listed());
    writeList(listOfData, known.listed());
  };
  const has = (blob: string) => seen.undamaged(blob, join(blobs, blob), () => isWhole(join(blobs, blob), blob));
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
    keepPieces: (write) => keepPieces(blobs, write),
    has,
    fileDigest: (path) => known.of(path, path),
    remember,
    bytes: (blob) => storedBytes(root, blob),
    prune: (keys, kept) => {
      removeOthers(entries, keys);
      removeOthers(blobs, kept);
      seen.keepOnly(kept);
      // The other list is of the author's files, of which none was asked for here.
      writeList(list, seen.listed());
    },
  };
}

/** The lists of what was found undamaged in the cache, and of the author's large files. */
export function listsOf(root: string): [ofCache: string, ofData: string] {
  return [join(root, '.cache', 'seen.json'), join(root, '.cache', 'known-data.json')];
}

/** Where a list has changed. */
function writeList(path: string, text: string | undefined): void {
  if (text !== undefined) writeWhole(path, text);
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
  if (!isWhole(join(folder, blob), blob)) writeWhole(join(folder, blob), bytes);
  return blob;
}

function keepPieces(folder: string, write: (append: (piece: Uint8Array) => void) => void): { blob: string; bytes: number } {
  const beside = join(folder, `${process.pid}-${threadId}.part`);
  const hash = createHash('sha256');
  let bytes = 0;
  try {
    const file = openSync(beside, 'w');
    try {
      write((piece) => {
        hash.update(piece);
        bytes += piece.length;
        for (let at = 0; at < piece.length; ) at += writeSync(file, piece, at);
      });
    } finally {
      closeSync(file);
    }
    const blob = hash.digest('hex');
    renameSync(beside, join(folder, blob));
    return { blob, bytes };
  } finally {
    rmSync(beside, { force: true });
  }
}

/** Whether a file is there and has the bytes of a digest. */
function isWhole(path: string, blob: string): boolean {
  try {
    return existsSync(path) && fileDigest(path) === blob;
  } catch {
    return false;
  }
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
