#!/usr/bin/env node
// The command `soakproof NAME …` of an installed package: finds the Node that the tool is tested with, and the command. Plain JavaScript
// for whatever Node the machine has.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { constants } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { commandsIn } from './list-commands.mjs';

const HERE = dirname(fileURLToPath(import.meta.url));
const MAJOR = '24';

const [name, ...args] = process.argv.slice(2);
const commands = commandsIn(HERE);

if (name === undefined || name === '--help') {
  console.log(helpText());
} else if (name === '--version') {
  console.log(JSON.parse(readFileSync(join(HERE, '..', '..', 'package.json'), 'utf8')).version);
} else if (!commands.has(name)) {
  refuse(`There is no command ${name}. \`soakproof --help\` lists them.`);
} else if (name !== 'new' && !args.includes('--help') && !existsSync('astro.config.mjs')) {
  refuse('There is no publication in this folder: no astro.config.mjs. Go to its folder, or make one with `soakproof new`.');
} else {
  const file = join(HERE, commands.get(name).file);
  if (process.versions.node.split('.')[0] === MAJOR) await here(file);
  else runWith(nodeOfPackage(), file);
}

function helpText() {
  const width = Math.max(...[...commands.keys()].map(({ length }) => length));
  const rows = [...commands].map(([each, { does }]) => `  ${each.padEnd(width)}  ${does.replace(/(?<=\.) .*/s, '')}`);
  return `soakproof NAME …\n\n${rows.join('\n')}\n\nEach says with --help what it takes and what its exit codes mean.`;
}

async function here(file) {
  process.argv = [process.argv[0], file, ...args];
  await import(pathToFileURL(file).href);
}

/** The Node that is installed with the tool. */
function nodeOfPackage() {
  const binary = process.platform === 'win32' ? 'node.exe' : 'node';
  const packageJson = createRequire(import.meta.url).resolve('node/package.json');
  const found = join(dirname(packageJson), 'bin', binary);
  if (existsSync(found)) return found;
  console.error(
    `Soakproof runs on Node ${MAJOR}. This one is ${process.version}, and the one that comes with the package was not put in place: npm may have left out its install script. Run \`npm rebuild node\`, then the same command again.`,
  );
  process.exit(1);
}

/** Hands signals on, and ends as the command ends. */
function runWith(node, file) {
  const running = spawn(node, [file, ...args], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => running.kill(signal));
  running.once('error', (thrown) => refuse(`Node ${MAJOR} does not start: ${thrown.message}`));
  running.once('exit', (code, signal) => {
    process.exitCode = code ?? (signal === null ? 1 : 128 + constants.signals[signal]);
  });
}

function refuse(sentence) {
  console.error(sentence);
  process.exitCode = 2;
}
