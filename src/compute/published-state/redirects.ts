/** Runs, devices and comparisons that stood under other ids: their former pages lead on, their former files keep their bytes. */
import type { Register } from '../../register/register.ts';
import { formerIdsOf, PAGE_FOLDERS, type PageFolder } from '../../register/sections/former-addresses.ts';
import type { Manifest } from '../results.ts';
import type { Store } from '../store/store.ts';
import type { Redirect } from './addresses.ts';
import { redirectPage } from './redirect-page.ts';

/** A page that has another address now. */
export interface Moved extends Redirect {
  readonly title: string;
}

/** Every former address whose page the site has (law 9), in the order of the register. */
export function movedPages(register: Pick<Register, PageFolder>, has: (page: string) => boolean): Moved[] {
  return PAGE_FOLDERS.flatMap((folder) =>
    [...register[folder].values()]
      .filter(({ id }) => has(`${folder}/${id}/`))
      .flatMap((item) =>
        formerIdsOf(item).map((former) => ({ from: `${folder}/${former}/`, to: `${folder}/${item.id}/`, title: item.title })),
      ),
  );
}

/**
 * For each of them a page that leads on; and every file beside its page once more, under its former name where that has the id in it, and
 * under the one that descriptions beside it have for it now. What descriptions name goes first where two files meet in one name.
 */
export function movedFiles(store: Store, moved: readonly Moved[], files: Manifest['files']): Manifest['files'][number][] {
  return moved.flatMap(({ from, to, title }) => {
    const beside = files.filter(({ path }) => path.startsWith(to));
    const former = new Map(beside.map(({ path, blob }) => [formerPath(path, from, to), blob]));
    for (const { path, blob } of beside) former.set(from + path.slice(to.length), blob);
    const page = { path: `${from}index.html`, blob: store.keep(redirectPage(from, to, title)) };
    return [page, ...[...former].map(([path, blob]) => ({ path, blob }))];
  });
}

/** `runs/new/data/new-clean.csv` stood at `runs/old/data/old-clean.csv`. */
export function formerPath(path: string, from: string, to: string): string {
  const same = from + path.slice(to.length);
  const at = same.lastIndexOf('/') + 1;
  const [id, former] = [lastStep(to), lastStep(from)];
  const name = same.slice(at);
  return name.startsWith(`${id}-`) || name.startsWith(`${id}.`) ? same.slice(0, at) + former + name.slice(id.length) : same;
}

function lastStep(page: string): string {
  return page.slice(page.indexOf('/') + 1, -1);
}
