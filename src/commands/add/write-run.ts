/** Writes the file of a run and says what is left to be written. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Output } from './output.ts';
import { composeRun, type Draft, isComplete } from './run-file.ts';

/** Writes the run of a log; whether nothing is left to be written. */
export function write(root: string, id: string, draft: Draft, output: Output): boolean {
  const { text, toWrite, taken } = composeRun(draft);
  const undecided = draft.matches.channels.filter((channel) => !isComplete(channel)).length;
  const units =
    undecided > 0
      ? ` ${undecided === 1 ? 'A column states' : `${undecided} columns state`} no unit: see the comments under channels.`
      : '';
  return writeRun(root, id, text, { toWrite, taken, rest: units }, output);
}

/** Writes the text of a run to content/runs, where no file of that name is; whether nothing is left to be written. */
export function writeRun(
  root: string,
  id: string,
  text: string,
  { toWrite, taken, rest }: { readonly toWrite: readonly string[]; readonly taken: readonly string[]; readonly rest: string },
  output: Output,
): boolean {
  const target = `content/runs/${id}.md`;
  mkdirSync(dirname(join(root, target)), { recursive: true });
  writeFileSync(join(root, target), text, { flag: 'wx' });
  const left = toWrite.length > 0 ? `to be written by you: ${toWrite.join(', ')}.` : 'ready for `npm run check`.';
  const only = taken.length > 0 ? ` Taken because there is only one, to be checked by you: ${taken.join(', ')}.` : '';
  output.out(`  wrote ${target}, ${left}${only}${rest}\n`);
  return toWrite.length === 0;
}
