/** How a publication depends on the tool that makes it. */
import { existsSync, readFileSync } from 'node:fs';
import { basename, join, relative, resolve, sep } from 'node:path';
import { textOf } from './in-the-way.ts';

export interface Tool {
  /** Where npm finds the tool: what the folder says in which it is installed, or its packed file. */
  readonly tool?: string;
  /** Why npm would not find it. A bare version would have npm ask a public registry, where the name may be anyone's. */
  readonly fault?: string;
  /** Which packages may run a script of their own when they are installed. */
  readonly allowScripts: Readonly<Record<string, boolean>>;
}

/** `folder` holds the tool's package.json, `before` is the publication's own: what that says of the tool already stays. */
export function toolOf(root: string, folder: string, before: string | undefined): Tool {
  const { version, allowScripts } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  if (saidOf(before) !== undefined) return { allowScripts };
  const above = resolve(folder, '..');
  const isInstalled = basename(above) === 'node_modules';
  const said = isInstalled ? saidOf(textOf(join(above, '..', 'package.json'))) : undefined;
  if (said !== undefined && !said.startsWith('file:')) return { tool: said, allowScripts };
  const packed = `soakproof-${version}.tgz`;
  const file = said === undefined ? resolve(folder, packed) : resolve(above, '..', said.slice('file:'.length));
  if (existsSync(file)) return { tool: `file:${relative(root, file).split(sep).join('/')}`, allowScripts };
  const fault = isInstalled
    ? `The packed file that this tool was installed from is not found. In the publication's folder, run \`npm install PATH/${packed}\`, then the same command again.`
    : `There is no ${packed} beside the tool, by which the publication would install it: run \`npm run package\` first, then the same command again.`;
  return { fault, allowScripts };
}

/** What a package.json says of the tool; undefined where it says nothing, or is none. */
function saidOf(text: string | undefined): string | undefined {
  try {
    const { dependencies, devDependencies } = JSON.parse(text ?? '{}');
    return dependencies?.soakproof ?? devDependencies?.soakproof;
  } catch {
    return undefined;
  }
}
