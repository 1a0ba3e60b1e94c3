/** What stands in a folder of pictures and is not ours to remove: it goes over into the new one. */
import { cpSync, existsSync, lstatSync, realpathSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { type Drawn, digestAt, LIST, listIn } from './list.ts';
import type { StillsOptions } from './options.ts';
import { FOLDER_OF_SVG, sizeName } from './write-pictures.ts';

type Asked = Pick<StillsOptions, 'looks' | 'widths'>;

/**
 * Copies from `before` into `folder` whatever is not there yet and is an author's own, or of a look or a size that was not asked for. Pictures
 * that we drew, that nobody changed since, and that the script no longer has are left behind. Gives the list of both kinds of our files.
 */
export function keepOthers(
  list: Drawn,
  asked: Asked,
  { folder, before }: { readonly folder: string; readonly before: string },
): Drawn {
  if (!existsSync(before)) return list;
  const whole = realpathSync(before);
  const last = listIn(before);
  const stays = (path: string): boolean => {
    const known = last[path];
    return known === undefined || !isAsked(path, asked) || digestAt(join(before, path)) !== known.sha256;
  };
  cpSync(whole, folder, {
    recursive: true,
    force: false,
    verbatimSymlinks: true,
    preserveTimestamps: true,
    filter: (from) => {
      const path = relative(whole, from).split(sep).join('/');
      return path !== LIST && (isFolder(from) || stays(path));
    },
  });
  const unasked = Object.entries(last).filter(([path]) => !isAsked(path, asked) && existsSync(join(folder, path)));
  return { ...Object.fromEntries(unasked), ...list };
}

/** Whether a file of ours belongs to what was asked for: texts always do. */
function isAsked(path: string, { looks, widths }: Asked): boolean {
  const [form = '', look] = path.split('/');
  if (look === undefined) return true;
  return [FOLDER_OF_SVG, ...widths.map(sizeName)].includes(form) && looks.some(({ name }) => name === look);
}

function isFolder(path: string): boolean {
  return lstatSync(path).isDirectory();
}
