/** Writes the run of a retest, and puts it in the place of the one that it follows where a note or comparison says `retests: follow`. */

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { readLogBytes } from '../../compute/project/read-data.ts';
import { dataFiles, readProject } from '../../compute/project/read-project.ts';
import { writeWhole } from '../../compute/store/store.ts';
import { inspect } from '../../intake/inspect.ts';
import type { Log } from '../../intake/log.ts';
import { read } from '../../intake/read.ts';
import type { LogBytes } from '../../intake/sheet/log-bytes.ts';
import { readRegister } from '../../register/read.ts';
import type { Register, Run } from '../../register/register.ts';
import { meant } from '../../register/values/names.ts';
import { isDate } from '../../register/values/values.ts';
import { locate } from '../add/locate.ts';
import { notUnderstood } from '../command-line.ts';
import type { Printer } from '../publish/publish-note.ts';
import { ownPhases } from './own-phases.ts';
import { namesRun, type Retest, retestText, withRun } from './run-text.ts';

const USAGE = `npm run retest -- larch-fast data/larch-2/fast-again.csv                          a retest of content/runs/larch-fast.md
npm run retest -- larch-fast data/larch-2/fast-again.csv --date 2026-05-02       where the log states no date
    --scores data/larch-2/again-scores.csv  --surface data/larch-2/again-surface.csv   its own tables; --image its thermal image
`;

interface Options {
  readonly old: string;
  readonly log: string;
  readonly date?: string | undefined;
  readonly scores?: string | undefined;
  readonly surface?: string | undefined;
  readonly image?: string | undefined;
}

/** Runs the command; the exit code. */
export function retestRun(root: string, args: readonly string[], printer: Printer): 0 | 1 | 2 {
  const options = readOptions(args);
  if (typeof options === 'string') return notUnderstood(printer, options, USAGE);
  const project = readProject(root);
  const { register } = readRegister(project.content, dataFiles(root));
  const id = options.old.replace(/^content\/runs\//, '').replace(/\.md$/, '');
  const old = register.runs.get(id);
  if (!old) return refuse(printer, `there is no run ${id}${remedy(id, register)}`);
  if (old.logs.some(({ name }) => name !== '')) return refuse(printer, severalLogs(old));
  const retest = retestOf(root, old, options);
  if (typeof retest === 'string') return refuse(printer, retest);
  const newId = idOf(id, retest.date);
  const file = `content/runs/${newId}.md`;
  if (existsSync(join(root, file))) return refuse(printer, `${file} is there already: nothing is written`);
  writeFileSync(join(root, file), retestText(readFileSync(join(root, old.file), 'utf8'), retest));
  printer.out(`${file} is written: a retest of "${old.title}".\n${left(old, retest)}`);
  follow(root, register, { old: id, retest: newId }, printer);
  printer.out(
    'Then: npm run check. Where published numbers changed, it says what to write; npm run correct writes it, and names the cues of scripts that need a new still.\n',
  );
  return 0;
}

function refuse(printer: Printer, text: string): 1 {
  printer.err(`${text}\n`);
  return 1;
}

/** One new log cannot stand for several. */
function severalLogs({ id, file }: Run): string {
  return (
    `${file} has \`logs\`, and a retest by this command has one log: nothing is written. Copy the file by hand under another name, write ` +
    `\`follows: ${id}\` and the new title and date into it, name the new files below \`logs\`, and remove known, repairs, readings and was`
  );
}

function remedy(id: string, { runs }: Register): string {
  const found = meant(id, runs.keys()).remedy;
  return found === undefined ? `; there are ${[...runs.keys()].join(', ')}` : `: ${found}`;
}

function readOptions(args: readonly string[]): Options | string {
  const text = { type: 'string' } as const;
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { date: text, scores: text, surface: text, image: text },
      allowPositionals: true,
    });
    const [old, log, more] = positionals;
    if (old === undefined || log === undefined) return 'name the run that was tested again, and the new log';
    if (more !== undefined) return `one retest at a time: ${positionals.join(', ')}`;
    if (values.date !== undefined && !isDate(values.date))
      return `--date ${values.date}: there is no such day; write it as 2026-04-02`;
    return { old, log, ...values };
  } catch (thrown) {
    return (thrown as Error).message;
  }
}

/** What the new run says otherwise than the old one, or why it cannot. */
function retestOf(root: string, old: Run, { log, date, scores, surface, image }: Options): Retest | string {
  const paths = new Map<string, string>();
  for (const [key, typed] of Object.entries({ log, scores, surface, image })) {
    if (typed === undefined) continue;
    const located = locate(root, typed);
    if ('refused' in located) return located.refused;
    paths.set(key, located.path);
  }
  const path = paths.get('log') as string;
  if (old.logs.some(({ declaration }) => declaration.file === path))
    return `data/${path} is the log of ${old.file} already: a retest has a log of its own`;
  const place = { file: `data/${path}`, line: 1, column: 1 };
  const bytes = readLogBytes(root, path, place);
  if ('found' in bytes) return `data/${path} cannot be read`;
  const day = date ?? inspect(bytes, `data/${path}`).time?.date;
  if (day === undefined) return `data/${path} states no date: name the day of the test with --date 2026-05-02`;
  if (day < old.date) return `the retest is of ${day}, and "${old.title}" of ${old.date}: a retest comes later`;
  return {
    follows: old.id,
    title: titleOf(old.title, day),
    date: day,
    log: path,
    scores: paths.get('scores'),
    surface: paths.get('surface'),
    image: paths.get('image'),
    phases: ownPhases(logOf(bytes, old, path), old),
  };
}

/** The new log, read as the old one was declared; what is wrong with it, `check` tells. */
function logOf(bytes: LogBytes, { logs: [first] }: Run, path: string): Log | null {
  if (first === undefined) return null;
  const { known: _, ...declaration } = first.declaration;
  return read(bytes, { ...declaration, file: path, repairs: [] }, `data/${path}`).log;
}

const RETEST_OF = /, retest of \d{4}-\d{2}-\d{2}$/;

function titleOf(title: string, date: string): string {
  return `${title.replace(RETEST_OF, '')}, retest of ${date}`;
}

function idOf(old: string, date: string): string {
  return `${old.replace(/-\d{4}-\d{2}-\d{2}$/, '')}-${date}`;
}

/** What the old run has and the new one lacks. */
function left(old: Run, { scores, surface, image, phases }: Retest): string {
  const lacking = [
    ...(old.scores !== undefined && scores === undefined ? ['scores: name them with --scores, or below `scores:`'] : []),
    ...(old.context.readings === undefined ? [] : ['readings off a display: write the new ones below `readings:`']),
    ...(old.surface !== undefined && surface === undefined
      ? ['surface readings: name them with --surface, or below `surface:`']
      : []),
    ...(old.surfaceImage !== undefined && surface !== undefined && image === undefined
      ? ['thermal image: name it with --image, or as `image:` below `surface:`']
      : []),
  ];
  const stated = `Look at its conditions: they are those of the old run.\n`;
  return `${lacking.map((each) => `It has no ${each}.\n`).join('')}${ofPhases(phases)}${stated}`;
}

function ofPhases(phases: Retest['phases']): string {
  if (phases === undefined) return '';
  if (phases === 'untold')
    return 'The phases of the old run do not fit the new log, and it does not show which do: write them below `phases:`.\n';
  const all = phases.map(({ name, stretch }) => `${name}: ${stretch}`).join(', ');
  return `The phases of the old run do not fit the new log. Found in it and written: ${all}. Correct them to what you did.\n`;
}

interface Place {
  readonly old: string;
  readonly retest: string;
}

/** Names the retest in the files that say so, and tells of the others. */
function follow(root: string, { notes, comparisons }: Register, { old, retest }: Place, printer: Printer): void {
  const followers = new Set<string>();
  for (const comparison of comparisons.values()) {
    const naming = [...notes.values()].filter((note) => [...note.comparisons.values()].includes(comparison.id));
    // One that only such notes name goes with them: else their sentences would speak of two tests.
    if (comparison.followsRetests || (naming.length > 0 && naming.every((note) => note.followsRetests)))
      followers.add(comparison.file);
  }
  for (const note of notes.values()) if (note.followsRetests) followers.add(note.file);
  for (const { file } of [...comparisons.values(), ...notes.values()]) {
    const path = join(root, file);
    const text = readFileSync(path, 'utf8');
    if (!namesRun(text, old)) continue;
    if (followers.has(file)) {
      writeWhole(path, withRun(text, old, retest));
      printer.out(`${file} now takes the retest.\n`);
    } else printer.out(`${file} stays with the old run. \`retests: follow\` in its front matter would have it follow.\n`);
  }
}
