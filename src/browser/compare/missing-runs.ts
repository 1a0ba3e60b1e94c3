/** Runs that an address names and the site no longer has: which record copies hold them. */
import { isUnreadable, readable } from '../../figures/json.ts';

export interface HeldCopy {
  readonly title: string;
  /** Below the base. */
  readonly path: string;
  readonly runs: readonly string[];
}

/** Reads `record-copies/index.json`; null where the text is no such file. */
export function readCopies(text: string): HeldCopy[] | null {
  const read = readable(text, (file) =>
    file
      .at('copies')
      .list()
      .map((copy) => ({
        title: copy.at('title').text(),
        path: copy.at('path').text(),
        runs: copy
          .at('runs')
          .list()
          .map((run) => run.text()),
      })),
  );
  return isUnreadable(read) ? null : read;
}

/** The copies that hold any of the runs, each with those that it holds. */
export function copiesOf(gone: readonly string[], copies: readonly HeldCopy[]): HeldCopy[] {
  return copies
    .map((copy) => ({ ...copy, runs: gone.filter((id) => copy.runs.includes(id)) }))
    .filter(({ runs }) => runs.length > 0);
}
