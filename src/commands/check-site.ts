/** `npm run check-site`: looks over the site in dist/ before it goes out. Exit code 1 where something must not go out. */
import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import './plain-failures.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { writer } from '../print/visible.ts';
import { isAddress } from './check-site/at-host.ts';
import { checkSite } from './check-site/check-site.ts';
import { ownNames } from './check-site/own-names.ts';
import { commandLine, notUnderstood } from './command-line.ts';

commandLine({
  name: 'check-site',
  does: 'Looks over the site in dist/ before it goes out: links that lead nowhere, names and numbers of your machine, network and place, sizes, and what changed. With --at it also asks a host where the site is already.',
  options: {
    '--since': { value: 'FOLDER', does: 'an earlier site to compare with; without it, the last one that this check let through' },
    '--at': { value: 'ADDRESS', does: 'where the site is on a host: its folders, files and headers are asked for' },
  },
  exits: { 0: 'the site may go out; there may be warnings', 1: 'something must not go out, or the host does not show the site' },
  example: 'npm run check-site -- --at https://bench.example/',
});

const { values } = parseArgs({ options: { since: { type: 'string' }, at: { type: 'string' } } });
const output = { out: writer(process.stdout), err: writer(process.stderr) };
const root = publicationFolder();
const since = values.since === undefined ? undefined : resolve(process.env.INIT_CWD ?? root, values.since);
const { at } = values;
if (since !== undefined && !statSync(since, { throwIfNoEntry: false })?.isDirectory())
  process.exit(notUnderstood(output, `There is no folder ${since}.`, 'npm run check-site -- --since FOLDER'));
if (at !== undefined && !isAddress(at))
  process.exit(
    notUnderstood(output, `--at is ${at}, expected a whole address.`, 'npm run check-site -- --at https://bench.example/'),
  );

try {
  process.exitCode = await checkSite(
    {
      root,
      names: ownNames(),
      ...(since === undefined ? {} : { since }),
      ...(at === undefined ? {} : { at: at.endsWith('/') ? at : `${at}/` }),
    },
    output,
  );
} catch (thrown) {
  if (!(thrown instanceof TypeError && thrown.message === 'fetch failed')) throw thrown;
  output.err(`No host answers at ${at}: is the address right, and is the host running?\n`);
  process.exitCode = 1;
}
