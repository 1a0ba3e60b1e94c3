/** Writes what published notes and scripts ask for after a change of the data: one reason, all numbers, all files. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { newStills, stillLines } from '../../compute/published-state/cues.ts';
import { type AskedNumber, correctionLines } from '../../compute/published-state/judge-note.ts';
import type { PresentNote } from '../../compute/published-state/protect.ts';
import { readPresent } from '../../compute/read-present.ts';
import { writeWhole } from '../../compute/store/store.ts';
import { counted } from '../../figures/in-words.ts';
import { report } from '../../print/report.ts';
import { isDate } from '../../register/values/values.ts';
import { notUnderstood } from '../command-line.ts';
import { findNote } from '../hold/find-note.ts';
import type { Printer } from '../publish/publish-note.ts';
import { withCorrections } from './with-corrections.ts';

const USAGE = `npm run correct -- --reason "The fast setting was tested again."     every published note and script
npm run correct -- --reason "why" content/notes/x.md                 this one alone
npm run correct -- --reason "why" --since 2026-05-02                 dated by you; otherwise by the newest run behind each
npm run correct                                                       shows what would be written
`;

interface Options {
  readonly reason?: string;
  readonly since?: string;
  readonly files: readonly string[];
}

/** Runs the command; the exit code. */
export async function correctNotes(root: string, args: readonly string[], printer: Printer): Promise<0 | 1 | 2> {
  const options = readOptions(args);
  if (typeof options === 'string') return notUnderstood(printer, options, USAGE);
  const files: string[] = [];
  for (const typed of options.files) {
    const found = findNote(root, typed);
    if ('refused' in found) return refuse(printer, found.refused);
    files.push(found.file);
  }
  const { notes, manifest } = await readPresent(root);
  const apart = manifest.problems.filter(
    ({ rule, place }) => rule === 'two-tests' && (files.length === 0 || files.includes(place.file)),
  );
  if (apart.length > 0) printer.err(report(root, apart));
  const asking = notes.filter(({ file, asked }) => asked.length > 0 && (files.length === 0 || files.includes(file)));
  const concerned = new Set(notes.map(({ file }) => file).filter((file) => files.length === 0 || files.includes(file)));
  const absent = manifest.problems.filter(({ rule, place }) => rule === 'absent-figure' && concerned.has(place.file));
  if (absent.length > 0) printer.out(`To be reworded by hand, since the data no longer gives the number:\n${report(root, absent)}`);
  const stills = notes.filter(({ file }) => concerned.has(file)).flatMap((note) => stillsOf(note, notes));
  if (stills.length > 0)
    printer.out(
      `Cues that need a new still, since their plots are drawn from other data (\`npm run stills\` draws them):\n${stills.map((line) => `  ${line}\n`).join('')}`,
    );
  if (asking.length === 0) {
    printer.out('No published number asks for a reason.\n');
    return 0;
  }
  for (const { file, asked } of asking) write(root, file, asked, options, printer);
  if (options.since === undefined) printer.out('Dated by the newest day that the data names; --since says another.\n');
  if (options.reason === undefined) printer.out('Nothing is written yet: say why with --reason "…".\n');
  return 0;
}

/** The cues of a script whose plots changed since it was published. */
function stillsOf({ file, cues }: PresentNote, notes: readonly PresentNote[]): string[] {
  const redrawn = new Map(notes.map(({ state, redrawn: ids }) => [state.of, new Set(ids)]));
  return stillLines(file, newStills(cues, redrawn));
}

function refuse(printer: Printer, text: string): 1 {
  printer.err(`${text}\n`);
  return 1;
}

function readOptions(args: readonly string[]): Options | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { reason: { type: 'string' }, since: { type: 'string' } },
      allowPositionals: true,
    });
    const { reason, since } = values;
    if (since !== undefined && !isDate(since)) return `--since ${since}: there is no such day; write it as 2026-04-02`;
    if (reason !== undefined && (reason.trim() === '' || /[\r\n]/.test(reason))) return '--reason: one line that says why';
    return {
      files: positionals,
      ...(reason === undefined ? {} : { reason: reason.trim() }),
      ...(since === undefined ? {} : { since }),
    };
  } catch (thrown) {
    return (thrown as Error).message;
  }
}

function write(root: string, file: string, asked: readonly AskedNumber[], { reason, since }: Options, printer: Printer): void {
  printer.out(`${file}: ${counted(asked.length, 'number')}\n${asked.map(lineOf).join('')}`);
  if (reason === undefined) return;
  const day =
    since ??
    (asked
      .map((each) => each.since)
      .sort()
      .at(-1) as string);
  const path = join(root, file);
  writeWhole(path, withCorrections(readFileSync(path, 'utf8'), correctionLines(asked, day, reason)));
}

function lineOf({ number, was, now }: AskedNumber): string {
  return `  ${was} is now ${now}  (${number})\n`;
}
