/** A project in a temporary folder: the demonstration's content and data, with notes of our own. */
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DEMONSTRATION } from '../../demonstration-folder.ts';

const FOLDERS = ['devices', 'instruments', 'setups', 'runs', 'comparisons', 'attempts'];

/** The folder, and how to remove it. The data is the demonstration's own, which nothing writes to. */
export function demoProject(): { readonly root: string; readonly remove: () => void } {
  const root = mkdtempSync(join(tmpdir(), 'soakproof-hold-'));
  mkdirSync(join(root, 'content', 'notes'), { recursive: true });
  for (const folder of FOLDERS) cpSync(join(DEMONSTRATION, 'content', folder), join(root, 'content', folder), { recursive: true });
  symlinkSync(join(DEMONSTRATION, 'data'), join(root, 'data'));
  return { root, remove: () => rmSync(root, { recursive: true, force: true }) };
}
