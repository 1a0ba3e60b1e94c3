/** Tells on the terminal how far a long file is read: nothing within the first second, then a line each further quarter. */

import { writeSync } from 'node:fs';

/** ms. */
const SILENT = 1000;
const QUARTERS = 4;

/** Told of the bytes that are read so far; writes at most four lines to stderr. Nothing is computed from the clock. */
export function readingProgress(
  file: string,
  size: number,
  write: (line: string) => void = toTerminal,
  clock: () => number = () => performance.now(),
): (done: number) => void {
  const from = clock();
  let told = 0;
  return (done) => {
    const quarter = Math.floor((done / size) * QUARTERS);
    if (quarter <= told || clock() - from < SILENT) return;
    told = quarter;
    write(`${file}: ${(100 * quarter) / QUARTERS} % of ${(size / 1e6).toFixed(0)} MB read\n`);
  };
}

/** A worker's own `stderr` waits until the worker is idle, and a log is read without a pause. */
function toTerminal(line: string): void {
  try {
    writeSync(STDERR, line);
  } catch {
    // A terminal that takes nothing now misses a line; the log is read all the same.
  }
}

const STDERR = 2;
