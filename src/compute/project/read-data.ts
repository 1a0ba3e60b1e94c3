/** Files below data/ as bytes. */
import { constants } from 'node:buffer';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { error, type Place, type Problem } from '../../problem.ts';
import { digest } from '../store/digest.ts';

/** Text of a file is one string, and no string is longer. */
const LARGEST = constants.MAX_STRING_LENGTH;

/** The bytes of a file; or, where it cannot be read, a problem at `place`. `what` names the file in words. */
export function readData(root: string, file: string, what: string, place: Place): Uint8Array | Problem {
  const path = join(root, 'data', file);
  const refused = (found: string, remedy: string) =>
    error('unreadable-file', place, `the ${what} data/${file} ${found}`, { remedy });
  try {
    const { size } = statSync(path);
    if (size <= LARGEST) return readFileSync(path);
    const [has, most] = [size, LARGEST].map((bytes) => Math.floor(bytes / 2 ** 20));
    return refused(`has ${has} MiB, and ${most} MiB is the most that can be read`, 'log less often, or split it into several runs');
  } catch (thrown) {
    const { code = 'unknown reason' } = thrown as NodeJS.ErrnoException;
    return refused(`cannot be read (${code})`, 'check the path and its permissions');
  }
}

/** SHA-256 of a file; '' where it cannot be read. */
export function digestOfData(root: string, file: string): string {
  const path = join(root, 'data', file);
  try {
    return statSync(path).size > LARGEST ? '' : digest(readFileSync(path));
  } catch {
    return '';
  }
}
