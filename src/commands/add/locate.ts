/** A path as typed -> a file below data/. */
import { existsSync, realpathSync, statSync } from 'node:fs';
import { basename, join, relative, resolve, sep } from 'node:path';

export type Located =
  | { readonly path: string }
  /** Why the file cannot be taken, and what to do. */
  | { readonly refused: string };

/** Finds a file: as typed from the project's folder, or below data/. The path found begins below data/ and has forward slashes. */
export function locate(root: string, typed: string): Located {
  const data = join(root, 'data');
  const candidates = [resolve(root, typed), resolve(data, typed)];
  const found = candidates.find((path) => existsSync(path));
  if (found === undefined)
    return { refused: `there is no file ${typed}: name one below data/, such as data/larch-2/fast-soak.csv` };
  if (statSync(found).isDirectory()) return { refused: `${typed} is a folder: name the files in it` };
  const inside = below(data, found);
  if (inside === undefined) return { refused: outside(typed, found) };
  // A link out of data/ would not be found on another machine.
  return below(realpathSync(data), realpathSync(found)) === undefined
    ? { refused: `${typed} is a link that leads out of data/: copy the file itself there` }
    : { path: inside };
}

function below(folder: string, path: string): string | undefined {
  const inside = relative(folder, path);
  return inside === '' || inside.startsWith('..') || resolve(folder, inside) !== path ? undefined : inside.split(sep).join('/');
}

function outside(typed: string, found: string): string {
  const target = `data/<device>/${basename(found)}`;
  return `${typed} is not below data/: copy it there first, as it came off the test bench (cp "${typed}" "${target}"), then add ${target}`;
}
