import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { redirectFiles } from '../../../src/compute/published-state/state-files.ts';
import { openStore } from '../../../src/compute/store/store.ts';

const root = mkdtempSync(join(tmpdir(), 'soakproof-redirects-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const FILES = [
  { path: 'notes/new/new.zip', blob: 'zip' },
  { path: 'notes/new/cite.bib', blob: 'bib' },
  { path: 'notes/new/plots/trace.svg', blob: 'svg' },
  { path: 'notes/newer/newer.zip', blob: 'other' },
];

/** What is put beside the pages, those that lead on as `page`. */
function led(...redirects: { readonly from: string; readonly to: string }[]): string[] {
  return redirectFiles(openStore(root), redirects, FILES, (page) => page).map(
    ({ path, blob }) => `${path} ${FILES.some((file) => file.blob === blob) ? blob : 'page'}`,
  );
}

describe('compute/published-state/state-files', () => {
  it('keeps archive and citations at the former address of a note, under their former names', () => {
    expect(led({ from: 'notes/old/', to: 'notes/new/' })).toEqual([
      'notes/old/index.html page',
      'notes/old/old.zip zip',
      'notes/old/cite.bib bib',
      'notes/old/plots/trace.svg svg',
    ]);
  });

  it('serves a note renamed twice at both addresses, and no path twice', () => {
    const twice = led(
      { from: 'notes/old/', to: 'notes/new/' },
      { from: 'notes/old/plots/trace.svg', to: 'notes/new/plots/trace.svg' },
      { from: 'notes/elder/', to: 'notes/new/' },
    );
    expect(twice.filter((line) => line.endsWith(' zip'))).toEqual(['notes/old/old.zip zip', 'notes/elder/elder.zip zip']);
    expect(new Set(twice.map((line) => line.split(' ')[0])).size).toBe(twice.length);
  });

  it('takes no files along from a run whose readers are led to a note, and makes a folder of a plot that is gone', () => {
    expect(led({ from: 'runs/old/', to: 'notes/new/' })).toEqual(['runs/old/index.html page']);
    expect(led({ from: 'notes/new/plots/gone.svg', to: 'notes/new/' })).toEqual(['notes/new/plots/gone.svg/index.html page']);
  });
});
