// The commands of a folder, read from the heads of their files. Plain JavaScript: `soakproof.mjs` runs on any Node.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The head of a command's file, as `command-line` prescribes it: its name, and what it does. */
const HEAD = /\bcommandLine\(\{\s*name: '([^']+)',\s*does:\s*(['"`])((?:\\.|(?!\2).)*)\2/s;

/** By name, sorted: the file of each, and what it does. */
export function commandsIn(folder) {
  const found = readdirSync(folder).flatMap((file) => commandIn(folder, file));
  return new Map(found.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** A file as an entry of the list; none where it holds no command. */
function commandIn(folder, file) {
  if (!/\.[jt]s$/.test(file)) return [];
  const found = HEAD.exec(readFileSync(join(folder, file), 'utf8'));
  return found ? [[found[1], { file, does: found[3].replace(/\\(.)/g, '$1') }]] : [];
}
