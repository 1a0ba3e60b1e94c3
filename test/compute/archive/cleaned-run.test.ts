import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readingCleaned } from '../../../src/compute/archive/cleaned-run.ts';
import { digest } from '../../../src/compute/digest.ts';
import { dataFiles, readProject } from '../../../src/compute/project.ts';
import { runStep } from '../../../src/compute/run-step.ts';
import { openStore } from '../../../src/compute/store.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { readRegister } from '../../../src/register/read.ts';
import { plainFile, plainText } from '../../../src/register/travel/plain.ts';
import { wholeRun } from '../../../src/register/travel/whole-run.ts';
import { computeDemoRun, demoRegister, HERE } from '../data/demo.ts';

const root = mkdtempSync(join(tmpdir(), 'soakproof-cleaned-run-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
mkdirSync(join(root, 'data'));

const { content } = readProject(HERE);
const fileAt = (path: string) => content.find((each) => each.path === path)!;
const shared = content.filter(({ path }) => /^content\/(?:devices|instruments)\//.test(path));

/** Tables beside the log are left out on both sides: they are not what is cleaned. */
const WITHOUT_TABLES = ['scores', 'surface'];

test.each([...demoRegister().runs.values()].map((run) => [run.id, run] as const))(
  'compute/archive: %s, declared to read its cleaned readings, has bit by bit the figures of its log',
  (id, run) => {
    const store = openStore(root);
    const { scores: _scores, surface: _surface, ...bare } = run;
    const original = computeDemoRun(store, bare).result;
    const clean = `${id}-clean.csv`;
    writeFileSync(join(root, 'data', clean), store.bytes(original.data!.cleaned!.sha256)!);
    const setup = plainFile(fileAt(`content/setups/${run.setup}.md`));
    const { keys, body } = wholeRun(plainFile(fileAt(run.file)), setup);
    const whole = { keys: new Map([...keys].filter(([key]) => !WITHOUT_TABLES.includes(key))), body };
    const text = plainText(readingCleaned(whole, original.summary!, clean));
    const read = readRegister([...shared, { path: run.file, text }], dataFiles(root));
    expect(read.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    const again = read.register.runs.get(id)!;
    const digests = { [clean]: digest(store.bytes(original.data!.cleaned!.sha256)!) };
    const result = runStep(root, store, {
      step: 'run',
      key: 'x',
      declaration: again.log,
      context: again.context,
      sharing: again.sharing!,
      tables: {},
      digests,
    });
    expect(result.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(result.data!.way).toBe('as it came');
    const [before, after] = [original.derived!.figures, result.derived!.figures];
    expect([...after.keys()]).toEqual([...before.keys()]);
    for (const [address, figure] of before) expect(stated(after.get(address)!), address).toEqual(stated(figure));
    expect([...before.values()].filter(isPresent).length).toBeGreaterThan(4);
  },
);

/** What a figure says, but for where it was read. */
function stated(figure: Parameters<typeof isPresent>[0]) {
  return isPresent(figure) ? { quantity: figure.quantity, interval: figure.interval } : { absent: figure.absent };
}
