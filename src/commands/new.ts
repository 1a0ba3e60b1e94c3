/** `npm run new -- FOLDER [LOG…]`: makes a publication. Exit code 1 where something was in the way. */
import { relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import './plain-failures.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { writer } from '../print/visible.ts';
import { commandLine, notUnderstood } from './command-line.ts';
import { commandsIn } from './list-commands.mjs';
import { makePublication, nextSteps } from './new/make-publication.ts';

commandLine({
  name: 'new',
  does: 'Makes a publication in a folder: its configuration, a place and an example for each kind of file, a recipe for checks. Logs are copied below data/, and their device, setup, runs and a draft are written. Nothing that is there is overwritten; a package.json that is there gets the scripts and the dependency that it lacks.',
  takes: [
    { name: 'FOLDER', is: 'where the publication is to stand; `.` for this folder' },
    { name: 'LOG', is: 'a log or table of yours', optional: true, many: true },
  ],
  options: {
    '--apart': { does: 'make each log a run of its own' },
    '--together': { does: 'make one run of all logs: a device log and a meter log of one test' },
  },
  exits: {
    0: 'the publication is there',
    1: 'something was in the way, and nothing was written; or a log could not be added, and all else is there',
  },
  example: 'npm run new -- ../my-bench ~/logs/soak.csv',
});

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: { apart: { type: 'boolean' }, together: { type: 'boolean' } },
});
const output = { out: writer(process.stdout), err: writer(process.stderr) };
if (values.apart && values.together)
  process.exit(notUnderstood(output, '--apart and --together exclude each other.', 'npm run new -- FOLDER --together LOG…'));
// npm runs scripts in the tool's folder; names are meant from where the command was given.
const from = process.env.INIT_CWD ?? publicationFolder();
const [root = from, ...logs] = positionals.map((path) => resolve(from, path));
const commands = [...commandsIn(import.meta.dirname).keys()].filter((name) => name !== 'new');
const choice = values.together ? 'together' : values.apart ? 'apart' : 'proposed';
process.exitCode = makePublication({ root, logs, commands, choice }, output);
if (process.exitCode === 0) process.stdout.write(nextSteps(root, relative(from, root), logs.length > 0));
