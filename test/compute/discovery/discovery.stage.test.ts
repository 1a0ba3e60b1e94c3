/** Over the demonstration: what its index and its search say is what its pages say, and nothing that no page says. */
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { PAGE_KINDS } from '../../../src/compute/discovery/dates.ts';
import { readManifest } from '../../../src/compute/project/manifest.ts';
import type { Manifest, PageModel, RunModel, RunsModel } from '../../../src/compute/results.ts';
import { openStore } from '../../../src/compute/store/store.ts';
import type { SearchFile } from '../../../src/search/document.ts';
import { type Finder, openIndex } from '../../../src/search/find.ts';

interface IndexFile {
  readonly format: number;
  readonly figures: Readonly<Record<string, string>>;
  readonly devices: Readonly<Record<string, { readonly title: string; readonly maker: string }>>;
  readonly runs: readonly {
    readonly id: string;
    readonly title: string;
    readonly device: string;
    readonly specimen: string;
    readonly date: string;
    readonly setting: string;
    readonly figures: Readonly<Record<string, string>>;
    readonly absent: Readonly<Record<string, string>>;
    readonly outcomes: readonly string[];
    readonly notes: readonly string[];
  }[];
}

let root: string;
let manifest: Manifest;
let index: IndexFile;
let model: RunsModel;
let find: Finder;

beforeAll(() => {
  root = inject('demonstration').root;
  manifest = readManifest(root, 'site')!;
  index = JSON.parse(file('runs/index.json')) as IndexFile;
  model = page('runs/') as RunsModel;
  find = openIndex(JSON.parse(file('search/index.json')) as SearchFile);
});

const text = (blob: string) => Buffer.from(openStore(root).bytes(blob)!).toString('utf8');
const file = (path: string) => text(manifest.files.find((each) => each.path === path)!.blob);
const page = (path: string) => JSON.parse(text(manifest.pages.find((each) => each.path === path)!.blob)) as PageModel;

describe('compute/discovery, every kind of page', () => {
  it('is in the demonstration: one that no file of compute/site/kinds gives is found here', () => {
    expect(new Set(manifest.pages.map(({ kind }) => kind))).toEqual(new Set(PAGE_KINDS));
  });
});

describe('compute/discovery, the index of runs', () => {
  it('has every run that has a page, and no other', () => {
    const pages = manifest.pages.filter(({ kind }) => kind === 'run').map(({ path }) => path);
    expect(index.runs.map(({ id }) => `runs/${id}/`).toSorted()).toEqual(pages.toSorted());
    expect(model.rows.map(({ id }) => id)).toEqual(index.runs.map(({ id }) => id));
    expect(index.runs.length).toBeGreaterThan(4);
    const dates = index.runs.map(({ date }) => date);
    expect(dates).toEqual(dates.toSorted().reverse());
  });

  it('prints each figure as the page of its run does, and says why one is absent', () => {
    expect(index.format).toBe(1);
    expect(Object.keys(index.figures)).toEqual(['peak_temperature', 'steady_temperature', 'mean_clock', 'load_power']);
    for (const run of index.runs) {
      const own = (page(`runs/${run.id}/`) as RunModel).groups.flatMap(({ figures }) => figures);
      for (const name of Object.keys(index.figures)) {
        const shown = own.find(({ address }) => address === name)!;
        expect(run.figures[name] ?? '').toBe(shown.shown);
        expect(name in run.absent).toBe(shown.absent !== undefined);
      }
    }
  });

  it('ranks by the unrounded figures', () => {
    for (const { name, ranks } of model.columns) {
      const values = model.rows.map(({ id }) => {
        const { figures } = JSON.parse(file(`runs/${id}/figures.json`)) as { figures: Record<string, { value?: number }> };
        return figures[name]?.value;
      });
      for (const [a, left] of values.entries())
        for (const [b, right] of values.entries())
          if (left !== undefined && right !== undefined) expect(Math.sign(left - right)).toBe(Math.sign(ranks[a]! - ranks[b]!));
    }
  });

  it('tells what a run came to by its figures', () => {
    const outcomes = Object.fromEntries(index.runs.map(({ id, outcomes: told }) => [id, told]));
    expect(outcomes['larch-fast']).toEqual(['throttled', 'held-at-limit', 'steady']);
    expect(outcomes['larch-rated']).toEqual(['steady']);
    expect(outcomes['larch-metered']).toEqual(['not-steady']);
  });

  it('names the notes that use a run, and its device', () => {
    const fast = index.runs.find(({ id }) => id === 'larch-fast')!;
    expect(fast.notes).toEqual(['notes/a-clock-it-cannot-keep/']);
    expect(index.devices[fast.device]!.title).toBe('Larch 2');
    expect(model.choices.clocks.map(({ title }) => title)).toEqual([
      '2.0\u00a0GHz',
      '2.2\u00a0GHz',
      '2.4\u00a0GHz',
      '2.6\u00a0GHz',
    ]);
    expect(model.clocks[model.rows.findIndex(({ id }) => id === 'larch-fast')]).toBe(3);
  });
});

describe('compute/discovery, the search', () => {
  it.each([
    ['cannot keep', 'notes/a-clock-it-cannot-keep/'],
    ['hour soak fast', 'runs/larch-fast/'],
    ['larch 2', 'devices/larch-2/'],
    ['steady temperature', 'method/#steady_temperature'],
    ['scaling exponent', 'method/#scaling_exponent'],
    ['larch steps', 'comparisons/larch-steps/'],
    ['spoken', 'scripts/a-clock-it-cannot-keep/'],
  ])('%s finds %s', (query, path) => {
    expect(find(query).hits.map((hit) => hit.path)).toContain(path);
  });

  it('finds a held number of a note as it is printed', () => {
    expect(find('59.5 °C').hits.map(({ path }) => path)).toContain('notes/a-clock-it-cannot-keep/');
  });

  it('leads to pages that there are, and to nothing else', () => {
    const pages = new Set(manifest.pages.map(({ path }) => path));
    const entries = Object.values(
      (JSON.parse(file('search/index.json')) as { index: { storedFields: Record<string, { path: string }> } }).index.storedFields,
    );
    expect(entries.length).toBeGreaterThan(40);
    for (const { path } of entries) expect(pages).toContain(path.replace(/#.*/, ''));
  });
});

describe('compute/discovery, law 9', () => {
  it('lets neither the index nor the search know a draft, a run that only a draft uses, or a held-back run', () => {
    const all = ['runs/index.json', 'search/index.json'].map(file).join('') + JSON.stringify([model, page('search/')]);
    expect(all).not.toMatch(/larch-preview|the-next-firmware/);
  });
});

describe('compute/discovery, dates', () => {
  it('stand by the pages that hang on one, and come from no clock', () => {
    const dates = new Map(manifest.pages.map(({ path, date }) => [path, date]));
    expect(dates.get('notes/a-clock-it-cannot-keep/')).toBe('2026-03-21');
    expect(dates.get('notes/a-clock-it-cannot-keep/ledger/')).toBe('2026-03-21');
    expect(dates.get('runs/larch-fast/')).toBe('2026-03-22');
    expect(dates.get('')).toBe('2026-03-28');
    expect(dates.get('runs/')).toBe('2026-03-28');
    expect(dates.get('method/')).toBeUndefined();
  });
});
