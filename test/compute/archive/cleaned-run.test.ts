import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { instantText, readingCleaned } from '../../../src/compute/archive/cleaned-run.ts';
import { dataFiles, readProject } from '../../../src/compute/project/read-project.ts';
import { type LogSummary, runStep } from '../../../src/compute/steps/runs/run-step.ts';
import { tablePaths } from '../../../src/compute/steps/runs/run-tables.ts';
import { digest } from '../../../src/compute/store/digest.ts';
import { openStore } from '../../../src/compute/store/store.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { mapUnder, type Plain, plainFile, plainText } from '../../../src/register/portable/plain-values.ts';
import { wholeRun } from '../../../src/register/portable/whole-run.ts';
import { readRegister } from '../../../src/register/read.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';
import { computeDemoRun, demoRegister } from '../data/demo.ts';

const root = mkdtempSync(join(tmpdir(), 'soakproof-cleaned-run-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
cpSync(join(DEMONSTRATION, 'data'), join(root, 'data'), { recursive: true });

const { content } = readProject(DEMONSTRATION);
const fileAt = (path: string) => content.find((each) => each.path === path)!;
const shared = content.filter(({ path }) => /^content\/(?:devices|instruments)\//.test(path));

test.each([...demoRegister().runs.values()].map((run) => [run.id, run] as const))(
  'compute/archive: %s, declared to read its cleaned readings, has bit by bit the figures of its log',
  (id, run) => {
    const store = openStore(root);
    const original = computeDemoRun(store, run).result;
    const clean = `${id}-clean.csv`;
    writeFileSync(join(root, 'data', clean), store.bytes(original.data![0]!.cleaned!.sha256)!);
    const setup = plainFile(fileAt(`content/setups/${run.setup}.md`));
    const whole = wholeRun(plainFile(fileAt(run.file)), setup);
    const text = plainText(readingCleaned(whole, original.summary!.logs[0]!, clean, true));
    const read = readRegister([...shared, { path: run.file, text }], dataFiles(root));
    expect(read.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    const again = read.register.runs.get(id)!;
    expect(again.logs[0]!.declaration.time?.start).toBe(original.summary!.logs[0]!.time.start ?? undefined);
    const tables = tablePaths(again);
    const names = [clean, ...Object.values(tables).map(({ file }) => file)];
    const digests = Object.fromEntries(names.map((name) => [name, digest(readFileSync(join(root, 'data', name)))]));
    const result = runStep(root, store, {
      step: 'run',
      key: 'x',
      run: id,
      logs: again.logs,
      channels: again.channels,
      context: again.context,
      tables,
      digests,
    });
    expect(result.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(result.data![0]!.sharedAs).toBe('as it came');
    const [before, after] = [original.derived!.figures, result.derived!.figures];
    expect([...after.keys()]).toEqual([...before.keys()]);
    for (const [address, figure] of before) expect(stated(after.get(address)!), address).toEqual(stated(figure));
    expect([...before.values()].filter(isPresent).length).toBeGreaterThan(4);
  },
);

test('compute/archive: the time of day stays with the author where nothing beside the log needs it', () => {
  const run = demoRegister().runs.get('larch-quick')!;
  const { summary } = computeDemoRun(openStore(root), run).result;
  expect(summary!.logs[0]!.time.start).not.toBeNull();
  const text = plainText(readingCleaned(plainFile(fileAt(run.file)), summary!.logs[0]!, 'x.csv', false));
  expect(text).toContain('format: elapsed');
  expect(text).not.toContain('start:');
});

test('compute/archive: the text of an instant reads back as the same microsecond (ISO 8601)', () => {
  expect(instantText(1_773_480_000)).toBe('2026-03-14T09:20:00Z');
  expect(instantText(1_773_480_000.25)).toBe('2026-03-14T09:20:00.25Z');
  expect(instantText(1_773_480_000.000001)).toBe('2026-03-14T09:20:00.000001Z');
  expect(instantText(59.9999999)).toBe('1970-01-01T00:01:00Z');
});

/** What a figure says, but for where it was read. */
function stated(figure: Parameters<typeof isPresent>[0]) {
  return isPresent(figure) ? { quantity: figure.quantity, interval: figure.interval } : { absent: figure.absent };
}

test('compute/archive: what speaks of lines and columns of the log stays behind, and steps that cleaned numbers do not show are declared', () => {
  const keys = new Map([
    ['log', 'fast.csv'],
    ['repairs', 'of lines'],
    ['known', 'of lines'],
    [
      'channels',
      new Map([
        [
          'soc',
          new Map([
            ['column', 'die'],
            ['unit', 'mK'],
            ['missing', '-1'],
            ['instrument', 'on-die'],
          ]),
        ],
      ]),
    ],
  ] as [string, Plain][]);
  const channels = [
    { name: 'soc', quantity: 'temperature', unit: '°C', step: 0.5 },
    { name: 'events', quantity: 'throttle_flag', unit: '1', step: null },
    { name: 'busy', quantity: 'utilisation', unit: '1', step: 0.01 },
  ];
  const summary = { name: '', alignment: null, channels, time: { start: null } } as unknown as LogSummary;
  const read = readingCleaned({ keys, body: '' }, summary, 'cleaned/fast-clean.csv', false);
  expect([...read.keys.keys()]).toEqual(['log', 'channels']);
  const declared = mapUnder(read.keys, 'channels');
  const reason = ['unit_reason', 'the cleaned readings are in canonical units'];
  expect([...mapUnder(declared, 'soc')]).toEqual([
    ['instrument', 'on-die'],
    ['column', 'soc'],
    ['unit', '°C'],
    reason,
    ['step', '0.5 K'],
  ]);
  expect([...mapUnder(declared, 'events')]).toEqual([
    ['quantity', 'throttle_flag'],
    ['column', 'events'],
  ]);
  expect([...mapUnder(declared, 'busy')]).toEqual([
    ['quantity', 'utilisation'],
    ['column', 'busy'],
    ['unit', '1'],
    reason,
    ['step', '0.01'],
  ]);
});
