/** Endings of files' names. */
import { basename } from 'node:path';

/** `.csv` of `soak.csv`, `.csv.gz` of `soak.csv.gz`; '' without one. */
export function endingOf(path: string): string {
  return /(?<=[^/])(?:\.[^./]*)?\.gz$|(?<=[^/])\.[^./]*$/i.exec(path)?.[0] ?? '';
}

/** The name of a file without its folders and its ending. */
export function stemOf(path: string): string {
  return basename(path, endingOf(path));
}
