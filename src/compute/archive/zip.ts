/** The one door to the zip library: files → the bytes of an archive, the same for the same files wherever and whenever it is made. */
import { unzipSync, type Zippable, zipSync } from 'fflate';
import { KINDS } from '../../pictures/kind.ts';
import { compareText } from '../../problem.ts';

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

/**
 * @param files - by path, in any order.
 * @param day - ISO date that all files bear.
 */
export function zipped(files: ReadonlyMap<string, Uint8Array>, day: string): Uint8Array {
  const tree: Zippable = {};
  for (const path of [...files.keys()].sort(compareText)) tree[path] = [files.get(path)!, { level: PACKED.test(path) ? 0 : LEVEL }];
  return zipSync(tree, { mtime: noonOf(day), ...ORIGIN });
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
