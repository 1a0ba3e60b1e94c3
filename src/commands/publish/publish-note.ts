/** Publishes one note or script: its status and its published state, both or neither. */

import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { dataFiles, readProject } from '../../compute/project/read-project.ts';
import { newestFirst, type PresentNote, stateOf } from '../../compute/published-state/protect.ts';
import { readStates, sealed, statePath } from '../../compute/published-state/read-states.ts';
import { type Present, readPresent, readPresentWith } from '../../compute/read-present.ts';
import { writeWhole } from '../../compute/store/store.ts';
import { counted } from '../../figures/in-words.ts';
import { report } from '../../print/report.ts';
import type { Problem } from '../../problem.ts';
import { readRegister } from '../../register/read.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import { notUnderstood } from '../command-line.ts';
import { findNote } from '../hold/find-note.ts';
import { readOneDated } from '../one-dated.ts';
import { setPublished } from './set-status.ts';

const USAGE = `npm run publish -- content/notes/x.md                      dated as the note is
npm run publish -- content/notes/x.md --date 2026-04-02    dated by you
npm run publish -- content/notes/x.md --strict             refused where nothing holds a number
`;

export interface Printer {
  out(text: string): void;
  err(text: string): void;
}

/** Runs the command; the exit code. */
export async function publishNote(root: string, args: readonly string[], printer: Printer): Promise<0 | 1 | 2> {
  const refuse = (text: string): 1 => {
    printer.err(`${text}\n`);
    return 1;
  };
  const strict = args.includes('--strict');
  const options = readOneDated(
    args.filter((arg) => arg !== '--strict'),
    'note',
  );
  if (typeof options === 'string') return notUnderstood(printer, options, USAGE);
  const found = findNote(root, options.file);
  if ('refused' in found) return refuse(found.refused);
  const now = await readPresent(root);
  const present = await asPublished(root, found.file, now);
  const note = present.notes.find(({ file }) => file === found.file);
  const problems = [...new Set([...problemsAgainst(present, found.file, note), ...brought(now, present, found.file)])];
  if (note === undefined || problems.some(({ severity }) => severity === 'error')) {
    return refuse(`${report(root, problems)}${found.file} is not published: mend its errors first`);
  }
  const earlier = earlierState(root, found.file);
  const date = options.date ?? note.state.date;
  if (earlier !== undefined && date < earlier.date)
    return refuse(`${found.file} was published on ${earlier.date}; a publication on ${date} cannot follow it`);
  const unheld = present.manifest.problems.filter(({ rule, place }) => rule === UNHELD && place.file === found.file);
  if (strict && unheld.length > 0)
    return refuse(`${report(root, unheld)}${found.file} is not published: ${unheldWords(unheld.length)}`);
  const state = nextState(note, earlier, date);
  writeBoth(root, found.file, state);
  if (unheld.length > 0)
    printer.err(
      `${unheldWords(unheld.length)[0]!.toUpperCase()}${unheldWords(unheld.length).slice(1)}. Nobody will hear of it when ${unheld.length === 1 ? 'it is' : 'they are'} no longer true. \`npm run check\` lists ${unheld.length === 1 ? 'it' : 'them'}, \`npm run hold -- ${found.file}\` offers what fits.\n`,
    );
  printer.out(
    `${found.file} is published as of ${date}: ${counted(state.entries.length, 'number')}, ${counted(state.plots.length, 'plot')} held in ${statePath(state.of)}. Commit both files.\n`,
  );
  return 0;
}

/** The rule of numbers that nothing holds. */
const UNHELD = 'unheld-number';

/** "nothing holds 2 of its numbers". */
function unheldWords(count: number): string {
  return `nothing holds ${count} of its numbers`;
}

/** Judged as it would stand in the site, before anything is written. A note that cannot be read is judged as it is. */
async function asPublished(root: string, file: string, now: Present): Promise<Present> {
  if (!now.notes.some((note) => note.file === file)) return now;
  const text = readFileSync(join(root, file), 'utf8');
  const published = setPublished(text);
  return published === text ? now : readPresentWith(root, file, published);
}

/** Errors in other files that only this publication brings. */
function brought(now: Present, then: Present, file: string): Problem[] {
  const errors = ({ manifest }: Present) => manifest.problems.filter(({ severity }) => severity === 'error');
  const known = new Set(errors(now).map((problem) => JSON.stringify(problem)));
  return errors(then).filter((problem) => problem.place.file !== file && !known.has(JSON.stringify(problem)));
}

/** What stands against publication: errors of the note and of what it rests on. */
function problemsAgainst({ manifest }: Present, file: string, note: PresentNote | undefined): Problem[] {
  if (note === undefined) return manifest.problems.filter((problem) => problem.severity === 'error');
  const own = new Set([file, ...note.state.sources.map(({ name }) => name)]);
  // Told anew in `against`, also for a note that is not out yet.
  const told = manifest.problems.filter(
    ({ place, rule, severity }) => severity === 'error' && own.has(place.file) && rule !== 'published-number',
  );
  return [...told, ...note.against];
}

/** The state that this note had, also under a name that it had before. */
function earlierState(root: string, file: string): PublishedState | undefined {
  const project = readProject(root);
  const { register } = readRegister(project.content, dataFiles(root));
  const note = [...register.notes.values()].find((each) => each.file === file);
  return note && stateOf(note, readStates(project.published).states);
}

/** What is stored: the present state, and the corrections that this publication closes. */
function nextState({ state, open }: PresentNote, earlier: PublishedState | undefined, date: string): PublishedState {
  const closed = open.map((correction) => ({ ...correction, closed: date }));
  // A table says "absent" from now on where what was recorded stood in for a figure; other such words cannot be published anew.
  const entries = state.entries.filter(({ kind, verdict }) => !(kind === 'table' && verdict === 'cannot be told'));
  return { ...state, entries, date, history: newestFirst([...closed, ...(earlier?.history ?? [])]) };
}

/** Both files or neither: where the note cannot be written, the state is put back as it was. */
function writeBoth(root: string, file: string, state: PublishedState): void {
  const path = join(root, statePath(state.of));
  const before = existsSync(path) ? readFileSync(path) : undefined;
  const text = readFileSync(join(root, file), 'utf8');
  const published = setPublished(text);
  mkdirSync(dirname(path), { recursive: true });
  writeWhole(path, sealed(state));
  try {
    if (published !== text) writeWhole(join(root, file), published);
  } catch (thrown) {
    if (before === undefined) rmSync(path);
    else writeWhole(path, before);
    throw thrown;
  }
}
