import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { computePictures } from '../../../../src/compute/steps/pictures/pictures.ts';
import { digest } from '../../../../src/compute/store/digest.ts';
import { openStore } from '../../../../src/compute/store/store.ts';
import * as make from '../../../../src/pictures/make.ts';

vi.mock('../../../../src/pictures/make.ts', { spy: true });

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-pictures-'));
  mkdirSync(join(root, 'data'));
});
afterEach(() => {
  rmSync(root, { recursive: true });
  vi.mocked(make.makePicture).mockClear();
});

async function pictures(bytes: Uint8Array, published = '') {
  writeFileSync(join(root, 'data', 'a.webp'), bytes);
  const place = { file: 'content/notes/n.md', line: 9, column: 1 };
  const request = { path: 'a.webp', alt: 'A bench', beside: 1, place };
  const outcomes = [{ written: { pictures: [request] } }] as unknown as Parameters<typeof computePictures>[0]['notes']['outcomes'];
  return computePictures({
    root,
    store: openStore(root),
    code: 'code',
    data: { kind: () => 'file' },
    notes: { outcomes },
    archived: new Map(published === '' ? [] : [['a.webp', { original: 'original', published }]]),
  });
}
const entries = () =>
  readdirSync(join(root, '.cache', 'entries'), { recursive: true, withFileTypes: true }).filter((e) => e.isFile());
const plain = () =>
  sharp({ create: { width: 32, height: 32, channels: 3, background: 'green' } })
    .webp()
    .toBuffer();

describe('compute/steps/pictures', () => {
  it('gives out no published file that holds more than its picture: a fault of ours, which is not stored', async () => {
    const more = Buffer.concat([await plain(), Buffer.from('GPS 48.1 owner=nobody')]);
    const { made, problems } = await pictures(more, digest(more));
    expect(made.size).toBe(0);
    expect(problems.map(({ rule, place }) => [rule, place.line])).toEqual([['fault', 9]]);
    expect(problems[0]!.found).toContain('the picture data/a.webp could not be made: more than the picture is in it: rest');
    expect(entries()).toEqual([]);
  });

  it('makes anew what failed for want of time, and keeps what is wrong with the file itself', async () => {
    vi.mocked(make.makePicture).mockRejectedValueOnce(new Error('timeout: 37% complete'));
    const bytes = await plain();
    expect((await pictures(bytes)).problems.map(({ rule }) => rule)).toEqual(['fault']);
    const again = await pictures(bytes);
    expect([again.problems, again.made.size]).toEqual([[], 1]);
    expect((await pictures(bytes.subarray(0, 40))).problems.map(({ rule }) => rule)).toEqual(['picture-broken']);
    const calls = vi.mocked(make.makePicture).mock.calls.length;
    expect((await pictures(bytes.subarray(0, 40))).problems.map(({ rule }) => rule)).toEqual(['picture-broken']);
    expect(vi.mocked(make.makePicture).mock.calls.length).toBe(calls);
  });
});
