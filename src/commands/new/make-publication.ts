/** Makes a publication in a folder: judges first, then writes what is not there, and nothing over what is. */
import { mkdirSync, readdirSync, realpathSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { toolFolder } from '../../compute/store/places.ts';
import { writeWhole } from '../../compute/store/store.ts';
import { idFromWords } from '../../register/values/names.ts';
import { addFiles } from '../add/add-files.ts';
import type { Choice } from '../add/options.ts';
import type { Output } from '../add/output.ts';
import { notUnderstood } from '../command-line.ts';
import { isFile, isReadable, isThere, textOf, wayFault } from './in-the-way.ts';
import { copyLog, LOGS } from './logs.ts';
import { noteSkeleton } from './note-skeleton.ts';
import { packageText } from './package-text.ts';
import { publicationFiles } from './publication-files.ts';
import { toolOf } from './tool.ts';

export interface NewPublication {
  readonly root: string;
  /** Logs and tables, as paths of the machine. */
  readonly logs: readonly string[];
  readonly commands: readonly string[];
  /** How the logs are put into runs. */
  readonly choice?: Choice;
  /** The folder that holds the tool's package.json. */
  readonly tool?: string;
}

const NOTE = 'content/notes/first-note.md';

/**
 * The exit code: 0 where all was written; 1 where nothing was, since something was in the way, or where a log could not be added; 2 where FOLDER
 * is a file.
 */
export function makePublication(
  { root, logs, commands, choice = 'proposed', tool = toolFolder() }: NewPublication,
  output: Output,
): 0 | 1 | 2 {
  if (isFile(root)) return notUnderstood(output, `${root} is a file, and FOLDER comes first.`, 'npm run new -- FOLDER [LOG…]');
  const files = publicationFiles();
  const before = textOf(join(root, 'package.json'));
  const found = toolOf(root, tool, before);
  const written = packageText(before, { name: idFromWords(basename(root)) || 'publication', commands, ...found });
  const faults = [
    ...['package.json', `data/${LOGS}/log`, NOTE, ...files.keys()].map((path) => wayFault(root, path)),
    ...logs.map((path) => (isReadable(path) ? undefined : `There is no file ${path}, or it may not be read.`)),
    'fault' in written ? written.fault : found.fault,
  ].filter((each) => each !== undefined);
  if (faults.length > 0 || 'fault' in written) {
    output.err([...new Set(faults), 'Nothing was written.', ''].join('\n'));
    return 1;
  }
  mkdirSync(root, { recursive: true });
  if (written.text !== before)
    writeWhole(before === undefined ? join(root, 'package.json') : realpathSync(join(root, 'package.json')), written.text);
  for (const sentence of written.notes) output.out(`${sentence}\n`);
  for (const [path, text] of files) writeMissing(root, path, text);
  output.out(`${relative('.', root) || 'This folder'} is a publication: examples/ has a file of each kind to copy from.\n`);
  return logs.length === 0 ? 0 : addLogs(root, logs, choice, output);
}

/** What to do in the new publication in `root`; `folder`: how to get there, '' where one is there already. */
export function nextSteps(root: string, folder: string, withLogs: boolean): string {
  const steps = [
    ...(folder === '' ? [] : [`cd ${folder}`]),
    ...(isThere(join(root, 'node_modules', 'soakproof')) ? [] : ['npm install']),
    ...(withLogs ? [] : ['npm run add -- data/my-device/*.csv   once your logs are below data/']),
    'npm run check                         lists what is left to complete, with file and line',
    'npm run dev                           shows the site while you write',
  ];
  return `Next:\n${steps.map((step) => `  ${step}`).join('\n')}\nName and address of the site stand in astro.config.mjs.\n`;
}

/** Puts logs below data/, writes their runs, and a note that shows them. */
function addLogs(root: string, logs: readonly string[], choice: Choice, output: Output): 0 | 1 {
  const code = addFiles(root, [...new Set(logs.map((path) => copyLog(root, path, output)))], output, { choice });
  const runs = readdirSync(join(root, 'content', 'runs')).flatMap((name) => (name.endsWith('.md') ? [name.slice(0, -3)] : []));
  const date = runs.map((id) => /^date: (\d{4}-\d{2}-\d{2})/m.exec(textOf(join(root, 'content', 'runs', `${id}.md`)) ?? '')?.[1]);
  const last = date
    .filter((each) => each !== undefined)
    .sort()
    .at(-1);
  if (runs.length > 0 && writeMissing(root, NOTE, noteSkeleton(runs.sort(), last)))
    output.out(`wrote ${NOTE}; a draft that shows the runs\n`);
  return code;
}

function writeMissing(root: string, path: string, text: string): boolean {
  const target = join(root, path);
  if (isThere(target)) return false;
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, text, { flag: 'wx', ...(text.startsWith('#!') ? { mode: 0o755 } : {}) });
  return true;
}
