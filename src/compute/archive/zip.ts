/** The one door to the zip library: files → an archive, the same bytes for the same files wherever and whenever it is made. */
import { unzipSync, zipSync } from 'fflate';
import { KINDS } from '../../pictures/kind.ts';
import { compareText } from '../../problem.ts';
import { MOST, TOO_LARGE } from './zip-limits.ts';

/** Of DEFLATE. Level 9 took twice the time for 1 % of the size. */
const LEVEL = 6;
/** Pictures are packed already: another try takes time and memory, and gains nothing. */
const PACKED = new RegExp(
  `\\.(?:${Object.values(KINDS)
    .flatMap(({ endings }) => endings)
    .join('|')})$`,
  'i',
);
/** A zip counts years from 1980 (APPNOTE.TXT, 4.4.6); the library takes them up to 2099. */
const YEARS = { first: 1980, last: 2099 };
/**
 * Made on UNIX (APPNOTE.TXT, 4.4.2), a plain file that its owner writes and all read. Info-ZIP's unzip takes the names of an archive made on
 * MS-DOS, which is what the library writes by itself, for code page 437 though they are flagged as UTF-8, and puts files with umlauts in
 * their names where no build finds them.
 */
const ORIGIN = { os: 3, attrs: 0o100644 << 16 };

/** Where the parts of an archive stand, and how they name each other (APPNOTE.TXT, 4.3.12 and 4.3.16). */
const OFFSET_IN_ENTRY = 42;
const END = { length: 22, entriesHere: 8, entries: 10, directoryLength: 12, directoryOffset: 16 };

/**
 * Hands the bytes of an archive on, piece by piece: one file is in memory at a time, and each stands behind its own length, so that programs
 * that read as they receive can unpack it too. Throws where the archive would be larger than 4 GiB.
 * @param files - by path, in any order; each is read when it is its turn.
 * @param day - ISO date that all files bear.
 */
export function writeZip(files: ReadonlyMap<string, () => Uint8Array>, day: string, append: (piece: Uint8Array) => void): void {
  if (files.size > MOST.files) throw new Error(TOO_LARGE);
  const mtime = noonOf(day);
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const path of [...files.keys()].sort(compareText)) {
    const level = PACKED.test(path) ? 0 : LEVEL;
    // An archive of this file alone: its own part, its entry in the directory, the end.
    const alone = zipSync({ [path]: [files.get(path)!(), { level }] }, { mtime, ...ORIGIN });
    const start = view(alone).getUint32(alone.length - END.length + END.directoryOffset, true);
    const entry = alone.slice(start, alone.length - END.length);
    view(entry).setUint32(OFFSET_IN_ENTRY, offset, true);
    directory.push(entry);
    append(alone.subarray(0, start));
    offset += start;
  }
  const length = directory.reduce((sum, entry) => sum + entry.length, 0);
  if (offset + length > MOST.bytes) throw new Error(TOO_LARGE);
  for (const entry of directory) append(entry);
  append(endOf(directory.length, length, offset));
}

function endOf(files: number, length: number, offset: number): Uint8Array {
  const end = zipSync({});
  view(end).setUint16(END.entriesHere, files, true);
  view(end).setUint16(END.entries, files, true);
  view(end).setUint32(END.directoryLength, length, true);
  view(end).setUint32(END.directoryOffset, offset, true);
  return end;
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** A zip holds local time: noon of the day is there in every zone, which cannot be said of midnight. */
function noonOf(day: string): Date {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return new Date(Math.min(YEARS.last, Math.max(YEARS.first, year)), month - 1, date, 12);
}

/** The files of an archive. Throws where it is none. */
export function unzipped(bytes: Uint8Array): { readonly path: string; readonly bytes: Uint8Array }[] {
  return Object.entries(unzipSync(bytes)).map(([path, each]) => ({ path, bytes: each }));
}
