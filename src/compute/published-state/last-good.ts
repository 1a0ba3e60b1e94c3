/** How notes stood at the last check or build without an error, for `npm run changes -- --since check`. */
import { join } from 'node:path';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import type { Manifest } from '../results.ts';
import { readSealed, writeSealed } from '../store/sealed-text.ts';
import { openStore } from '../store/store.ts';
import type { PresentNote } from './protect.ts';

const path = (root: string) => join(root, '.cache', 'last-good.json');

/** Keeps the present states of a manifest without errors. */
export function writeLastGood(root: string, { present, problems }: Pick<Manifest, 'present' | 'problems'>): void {
  if (problems.some(({ severity }) => severity === 'error')) return;
  writeSealed(path(root), Buffer.from(openStore(root).bytes(present)).toString('utf8'));
}

/** The states at the last good check; undefined where there was none, or what was kept of it is damaged. */
export function lastGood(root: string): readonly PublishedState[] | undefined {
  const kept = readSealed(path(root));
  return kept === undefined ? undefined : (JSON.parse(kept) as PresentNote[]).map(({ state }) => state);
}
