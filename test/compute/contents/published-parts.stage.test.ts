/** What other programs can do with the published files alone, over the demo. */
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { readManifest } from '../../../src/compute/project/manifest.ts';
import type { Manifest } from '../../../src/compute/results.ts';
import { openStore } from '../../../src/compute/store/store.ts';
import { subtract } from '../../../src/quantities/arithmetic.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';

interface Present {
  readonly value: number;
  readonly unit: string;
  readonly u: number | null;
  readonly parts: Readonly<Record<string, number>> | null;
}
interface Published {
  readonly format: number;
  readonly sources: Readonly<Record<string, { readonly title: string; readonly dof: number | null }>>;
  readonly figures: Readonly<Record<string, Present | { readonly absent: string }>>;
}

let root: string;
let manifest: Manifest;
const files = new Map<string, Published>();

beforeAll(() => {
  root = inject('demonstration').root;
  manifest = readManifest(root, 'site')!;
  const store = openStore(root);
  for (const { path, blob } of manifest.files) {
    if (path.endsWith('/figures.json')) files.set(path, JSON.parse(Buffer.from(store.bytes(blob)!).toString('utf8')));
  }
});

function presents(path: string): [string, Present][] {
  return Object.entries(files.get(path)!.figures).filter((entry): entry is [string, Present] => 'value' in entry[1]);
}

/** The published difference by hand: design of the file format, no code of ours. Shares of one source are added smallest first. */
function byHand(a: Present, b: Present): { value: number; u: number | null } {
  const value = a.value - b.value;
  if (a.parts === null || b.parts === null) return { value, u: null };
  const shares = [...new Set([...Object.keys(a.parts), ...Object.keys(b.parts)])]
    .sort()
    .map((id) => {
      const both = [a.parts![id], b.parts![id] === undefined ? undefined : -b.parts![id]].filter((share) => share !== undefined);
      return both.sort((x, y) => x - y).reduce((x, y) => x + y);
    })
    .filter((share) => share !== 0);
  if (shares.length === 1) return { value, u: Math.abs(shares[0]!) };
  return { value, u: Math.sqrt(shares.reduce((sum, share) => sum + share * share, 0)) };
}

function quantityOf(path: string, { value, unit, parts }: Present): Quantity {
  const { sources } = files.get(path)!;
  const list = parts && Object.entries(parts).map(([id, share]) => ({ source: { id, ...sources[id]! }, share }));
  return { value, unit, parts: list };
}

describe('published figures', () => {
  test('nothing of the demo is an error, and every kind of file is there', () => {
    expect(manifest.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect([...files.keys()].sort()).toEqual(
      expect.arrayContaining([
        'comparisons/larch-steps/figures.json',
        'devices/larch-2/figures.json',
        'runs/larch-fast/figures.json',
      ]),
    );
    expect([...files.values()].every(({ format }) => format === 1)).toBe(true);
  });

  test('the difference in power computed from parts alone is the one of the comparison, to the last bit', () => {
    const [rated] = presents('runs/larch-rated/figures.json').filter(([key]) => key === 'load_power');
    for (const alias of ['brisk', 'quick', 'fast']) {
      const own = presents(`runs/larch-${alias}/figures.json`).find(([key]) => key === 'load_power')![1];
      const published = presents('comparisons/larch-steps/figures.json').find(([key]) => key === `power_delta.${alias}`)![1];
      expect(byHand(own, rated![1])).toEqual({ value: published.value, u: published.u });
    }
  });

  test('so is the difference of any two figures of one unit, of runs and of comparisons, as stage 1 computes it', () => {
    let compared = 0;
    const wrong: string[] = [];
    const paths = [...files.keys()].filter((path) => path.startsWith('runs/') || path.startsWith('comparisons/'));
    const base = 'runs/larch-rated/figures.json';
    for (const path of paths) {
      for (const [address, figure] of presents(path)) {
        for (const other of [base, path]) {
          const same = presents(other).filter(([key, { unit }]) => unit === figure.unit && (other === path || key === address));
          for (const [, beside] of same) {
            const ours = subtract(quantityOf(path, figure), quantityOf(other, beside)) as Quantity;
            const { value, u } = byHand(figure, beside);
            if (value !== ours.value || u !== standardUncertainty(ours)) wrong.push(`${path} ${address}`);
            compared++;
          }
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(compared).toBeGreaterThan(1000);
  });

  test('u is the root sum of squares of the parts, and every part has its source', () => {
    for (const [path, { sources }] of files) {
      for (const [, { u, parts }] of presents(path)) {
        if (parts === null) continue;
        const shares = Object.values(parts);
        const sum =
          shares.length === 1 ? Math.abs(shares[0]!) : Math.sqrt(shares.reduce((total, share) => total + share * share, 0));
        expect(u).toBe(sum);
        expect(Object.keys(parts).filter((id) => !(id in sources))).toEqual([]);
      }
    }
  });

  test('a held-back run is in no device’s figures', () => {
    expect(JSON.stringify(files.get('devices/larch-2/figures.json'))).not.toContain('larch-preview');
  });
});
