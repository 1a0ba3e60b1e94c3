import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { recordComparison } from '../../../src/commands/record/record-comparison.ts';
import { readPresent } from '../../../src/compute/read-present.ts';
import { sealedCopy } from '../../../src/compute/record-copies/copy.ts';
import { digest } from '../../../src/compute/store/digest.ts';
import type { RecordCopy } from '../../../src/register/sealed/record-copies.ts';
import { copyBuilt } from '../../site/project.ts';
import { demoProject } from '../hold/demo.ts';

const COMPARISON = 'content/comparisons/larch-steps.md';
const NOTE = 'content/notes/plain.md';

let project: ReturnType<typeof demoProject>;
beforeAll(() => {
  project = demoProject();
  copyBuilt(project.root, ['.cache']);
  const runs = join(project.root, 'content', 'runs');
  const others = readdirSync(runs).filter((name) => !/^larch-(rated|brisk|quick|fast)\.md$/.test(name));
  for (const name of others) rmSync(join(runs, name));
  rmSync(join(project.root, 'content', 'attempts'), { recursive: true });
});
afterAll(() => project.remove());

const write = (path: string, text: string) => writeFileSync(join(project.root, path), text);
const read = (path: string) => readFileSync(join(project.root, path), 'utf8');
const copies = () => {
  try {
    return readdirSync(join(project.root, 'content', 'record-copies'));
  } catch {
    return [];
  }
};

/** A note that names the comparison. */
function note(status: string): void {
  const head = `title: Plain words\ndate: 2026-04-01\nstatus: ${status}\ncomparisons:\n  steps: larch-steps`;
  write(NOTE, `---\n${head}\n---\n\nIt is :value[steps.speedup.fast] times as quick.\n`);
}

async function record(...args: string[]) {
  let out = '';
  let err = '';
  const code = await recordComparison(project.root, args, { out: (more) => (out += more), err: (more) => (err += more) });
  return { code, out, err };
}

describe('commands/record/record-comparison', () => {
  test('what no published note reaches may not be frozen, and the message says so plainly', async () => {
    note('held back');
    expect(await record(COMPARISON)).toEqual({
      code: 1,
      out: '',
      err: `${COMPARISON} is in no published note, and a record copy is published for ever.
Publish a note that names it under \`comparisons\` first, then freeze what that note rests on.\n`,
    });
    expect(copies()).toEqual([]);
  });

  test('a comparison that a published note names is frozen as of the day of its newest run, named by its content', async () => {
    note('published');
    const { code, out, err } = await record('larch-steps');
    expect([code, err]).toEqual([0, '']);
    const [name = ''] = copies();
    expect(name).toMatch(/^larch-steps-[0-9a-f]{12}\.json$/);
    expect(out).toMatch(
      /holds “Four settings of specimen no-1” as of 2026-03-14: 4 runs, \d+ figures\.\nThe next build publishes it as record-copies\//,
    );
    const text = read(`content/record-copies/${name}`);
    const { sha256: _seal, ...copy } = JSON.parse(text) as RecordCopy & { sha256: string };
    expect(sealedCopy(copy)).toBe(text);
    expect(copy).toMatchObject({ format: 1, date: '2026-03-14', record: { id: 'larch-steps', reference: 'rated' } });
    const [, , , fast] = copy.record.runs;
    expect(fast!.log!.sha256).toBe(digest(readFileSync(join(project.root, fast!.log!.file))));
  });

  test('frozen again unchanged, also under another day, it says so and makes none', async () => {
    for (const args of [[], ['--date', '2026-05-01']]) {
      const { code, out } = await record(COMPARISON, ...args);
      expect(code).toBe(0);
      expect(out).toMatch(/^Nothing changed since larch-steps-[0-9a-f]{12}, as of 2026-03-14: no other copy is made\.\n$/);
    }
    expect(copies()).toHaveLength(1);
  });

  test('its address is published with the notes that name the comparison, and may vanish as little as theirs', async () => {
    const { notes } = await readPresent(project.root);
    const named = notes.filter(({ state }) => state.addresses.some((address) => address.startsWith('record-copies/larch-steps-')));
    expect(named.map(({ file }) => file)).toEqual([NOTE]);
  });

  test('a day before its newest run, one that does not exist, a comparison that is not there: refused with the reason', async () => {
    expect((await record(COMPARISON, '--date', '2026-03-13')).err).toBe(
      'its newest run is of 2026-03-14; a copy as of 2026-03-13 cannot hold it\n',
    );
    expect((await record(COMPARISON, '--date', '2026-02-30')).err).toContain('there is no such day');
    expect((await record('larch-stepps')).err).toBe('there is no comparison larch-stepps: did you mean `larch-steps`?\n');
    expect((await record()).err).toMatch(/^which comparison\? Name one file\nnpm run record -- /);
    expect((await record('a', 'b')).err).toContain('one comparison at a time: a, b');
  });

  test('a changed comparison is another copy; the first stays as it is', async () => {
    const [first = ''] = copies();
    const text = read(`content/record-copies/${first}`);
    write(COMPARISON, read(COMPARISON).replace('title: Four settings', 'title: All settings'));
    expect((await record(COMPARISON, '--date', '2026-05-01')).code).toBe(0);
    expect(copies()).toHaveLength(2);
    expect(read(`content/record-copies/${first}`)).toBe(text);
  });

  test('a file under the name of the copy that holds something else is not written over', async () => {
    const [edited] = copies().filter((name) => read(`content/record-copies/${name}`).includes('All settings'));
    const path = `content/record-copies/${edited}`;
    write(path, 'mine');
    const refused = await record(COMPARISON, '--date', '2026-05-01');
    expect(refused.code).toBe(1);
    expect(refused.err).toContain(`${path} is there already and holds something else`);
    expect(read(path)).toBe('mine');
  });

  test('a comparison whose run has an error is refused with that error', async () => {
    const run = 'content/runs/larch-fast.md';
    const text = read(run);
    write(run, text.replace('date: 2026-03-14', 'date: 2026-03-41'));
    const { code, err } = await record(COMPARISON);
    write(run, text);
    expect(code).toBe(1);
    expect(err).toContain(`${run}:`);
    expect(err).toContain(`${COMPARISON} is not frozen: mend its errors first`);
  });
});
