/** The arithmetic of the page, loaded with the first chosen run: published files → figures of a comparison, laid out. */
import { isUnreadable } from '../../figures/read-figures-json.ts';
import { gatherChosen } from './chosen.ts';
import type { Failed, RunFiles } from './load.ts';
import { underNames } from './names.ts';
import { type ReadRun, readRun } from './read-run.ts';

export { resultOf } from './result.ts';
export { gatherChosen, underNames };

/** A run from its files, or the end of a sentence that says why not. */
export function runOf({ figures, series }: RunFiles): ReadRun | Failed {
  const read = readRun(figures, series);
  return isUnreadable(read) ? { why: read.unreadable } : read;
}
