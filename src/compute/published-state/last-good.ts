/** How notes stood at the last check or build without an error, for `npm run changes -- --since check`. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import type { Manifest } from '../results.ts';
import { openStore, writeWhole } from '../store/store.ts';
import type { PresentNote } from './protect.ts';

const path = (root: string) => join(root, '.cache', 'last-good.json');

/** Keeps the present states of a manifest without errors. */
export function writeLastGood(root: string, { present, problems }: Pick<Manifest, 'present' | 'problems'>): void {
  const bytes = openStore(root).bytes(present);
  if (bytes !== undefined && problems.every(({ severity }) => severity !== 'error')) writeWhole(path(root), bytes);
}

/** The states at the last good check; undefined where there was none. */
export function lastGood(root: string): readonly PublishedState[] | undefined {
  if (!existsSync(path(root))) return undefined;
  try {
    return (JSON.parse(readFileSync(path(root), 'utf8')) as PresentNote[]).map(({ state }) => state);
  } catch {
    return undefined;
  }
}
