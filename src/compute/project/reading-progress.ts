/** Tells on the terminal how far a long file is read: nothing within the first second, then a line each further quarter. */

/** ms. */
const SILENT = 1000;
const QUARTERS = 4;

/** Told of the bytes that are read so far; writes at most four lines to stderr. Nothing is computed from the clock. */
export function readingProgress(
  file: string,
  size: number,
  write: (line: string) => void = (line) => process.stderr.write(line),
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
