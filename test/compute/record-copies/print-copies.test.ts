import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyFile, sealedCopy } from '../../../src/compute/record-copies/copy.ts';
import { type PrintedCopies, printCopies, recordOf } from '../../../src/compute/record-copies/print-copies.ts';
import { openPool, type Pool } from '../../../src/compute/steps/pool.ts';
import { digest } from '../../../src/compute/store/digest.ts';
import { recording } from '../../../src/compute/store/memo.ts';
import { openStore, type Store } from '../../../src/compute/store/store.ts';
import { copyOf, recorded, recordedRun, temperature } from './recorded.ts';

const CODE = { all: 'all code', compared: 'what draws' };

let root: string;
let store: Store;
let pool: Pool;
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-copies-'));
  store = openStore(root);
  pool = openPool(root, 1);
});
afterAll(async () => {
  await pool.close();
  rmSync(root, { recursive: true });
});

const fileOf = (copy = copyOf()) => ({ path: copyFile(copy.id), text: sealedCopy(copy) });
const print = (...files: { path: string; text: string }[]): Promise<PrintedCopies> =>
  printCopies({ store, pool, code: CODE }, files);
const entries = () => readdirSync(join(root, '.cache', 'entries')).length;

describe('compute/record-copies/print-copies', () => {
  it('prints a copy with its files, and finds it again by its bytes', async () => {
    const file = fileOf();
    const first = await print(file);
    expect(first.problems).toEqual([]);
    const [printed] = first.copies;
    const path = `record-copies/${printed!.id}/`;
    expect(printed).toMatchObject({
      title: 'Two settings',
      comparison: 'larch-steps',
      runs: [{ run: 'larch-rated' }, { run: 'larch-fast' }],
      own: { kind: 'comparison', notes: [], copies: [], runs: [{ path: '' }, { path: '' }], figuresFile: `${path}figures.json` },
    });
    expect(printed!.sha256).toBe(digest(file.text));
    expect(printed!.files.slice(0, 2).map((each) => each.path)).toEqual([`${path}record.json`, `${path}figures.json`]);
    expect(Buffer.from(store.bytes(printed!.files[0]!.blob)!).toString()).toBe(file.text);
    expect(recordOf(store, printed!)).toEqual(copyOf().record);
    const stored = entries();
    const used = recording(store);
    expect(await printCopies({ store: used, pool, code: CODE }, [file])).toEqual(first);
    expect(entries()).toBe(stored);
    // What it rests on is named with it: the plots, and their drawings.
    expect(used.used().entries.length).toBe(stored);
    expect(used.used().blobs).toEqual(expect.arrayContaining(printed!.files.map(({ blob }) => blob)));
  });

  it('lists the newest first', async () => {
    const days = ['2026-03-20', '2026-05-01', '2026-04-01'];
    const { copies } = await print(...days.map((day) => fileOf(copyOf(recorded(), day))));
    expect(copies.map(({ date }) => date)).toEqual(['2026-05-01', '2026-04-01', '2026-03-20']);
  });

  it('a copy of somebody else that cannot be printed is a problem of its file, and the others stand', async () => {
    const run = recordedRun('fast', 71.3, { figures: { peak_temperature: { absent: 'as-it-likes', why: 'Because.' } } });
    const unknown = fileOf(copyOf(recorded({ runs: [recordedRun('rated', 61.5), run] })));
    const { copies, problems } = await print(unknown, fileOf());
    expect(copies).toHaveLength(1);
    expect(problems).toMatchObject([{ severity: 'error', place: { file: unknown.path, line: 1, column: 1 } }]);
    expect(problems[0]!.found).toMatch(/^this record copy could not be printed: .*as-it-likes/);
  });

  it('prints what nobody would freeze: nothing logged, units that nobody knows, a thousand words', async () => {
    const bare = recordedRun('fast', 71.3, { figures: {}, setting: [], conditions: [], instruments: [], channels: [], tables: [] });
    const run = { ...bare, title: 'word '.repeat(1000), series: { ...bare.series, phases: [], load: null, span: 0, channels: [] } };
    const odd = recordedRun('rated', 61.5, { figures: { peak_temperature: { ...temperature(61.5), unit: 'furlong' } } });
    const { copies, problems } = await print(fileOf(copyOf(recorded({ runs: [odd, run], figures: {} }))));
    expect(problems).toEqual([]);
    expect(copies[0]!.own.runs).toHaveLength(2);
  });
});
