/** Ten retests of the demonstration, made by the simulator: what each round asks for is pasted once, and check is clean. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { correctNotes } from '../../../src/commands/correct/correct-notes.ts';
import { withCorrections } from '../../../src/commands/correct/with-corrections.ts';
import { retestRun } from '../../../src/commands/retest/retest-run.ts';
import { readPresent } from '../../../src/compute/read-present.ts';
import type { Problem } from '../../../src/problem.ts';
import { DEMO_RUNS, type DemoRun } from '../../simulator/demo-runs.ts';
import { imageTable, scoresTable, surfaceTable } from '../../simulator/demo-tables.ts';
import { write } from '../../simulator/dialect.ts';
import type { Options } from '../../simulator/options.ts';
import { simulate } from '../../simulator/simulate.ts';
import { copyProject, type TestProject } from '../../site/project.ts';

interface Retest {
  /** The run as the simulator knows it, and the id of the run that is tested again. */
  readonly name: 'rated' | 'brisk' | 'quick' | 'fast' | 'second';
  readonly old: string;
  readonly seed: number;
  /** By how much the room begins warmer, K. */
  readonly warmer: number;
  /** How else it was tested otherwise. */
  readonly otherwise?: Partial<Options>;
  /** Without the rows between two instants, s. */
  readonly gap?: readonly [from: number, to: number];
}

const DAYS = ['2026-05-02', '2026-06-02', '2026-07-02', '2026-08-02'] as const;

const SHORT = { idle: 300, load: 1200, coolDown: 300 };

/** Four rounds, ten retests; some of them are retests of retests. */
const ROUNDS: readonly (readonly Retest[])[] = [
  // It never reaches its limit: the time to throttle becomes a bound.
  [{ name: 'fast', old: 'larch-fast', seed: 9101, warmer: -14 }],
  [
    // Too short to settle, and phases of its own.
    { name: 'rated', old: 'larch-rated', seed: 9102, warmer: -0.4, otherwise: { schedule: SHORT } },
    // A room that warms all the time.
    { name: 'quick', old: 'larch-quick', seed: 9103, warmer: 0.5, otherwise: { room: { start: 22, warming: 9, wander: 0.04 } } },
  ],
  [
    { name: 'brisk', old: 'larch-brisk', seed: 9104, warmer: 0.2, gap: [2400, 3300] },
    { name: 'fast', old: 'larch-fast-2026-05-02', seed: 9105, warmer: -0.8 },
    { name: 'second', old: 'larch-second', seed: 9106, warmer: 0.3 },
  ],
  [
    { name: 'rated', old: 'larch-rated-2026-06-02', seed: 9107, warmer: 0.1 },
    { name: 'brisk', old: 'larch-brisk-2026-07-02', seed: 9108, warmer: -0.2 },
    // It reaches its limit.
    { name: 'quick', old: 'larch-quick-2026-06-02', seed: 9109, warmer: 9 },
    { name: 'fast', old: 'larch-fast-2026-07-02', seed: 9110, warmer: 0.6 },
  ],
];

const FOLLOWING = [
  'content/notes/a-clock-it-cannot-keep.md',
  'content/notes/a-second-larch.md',
  'content/scripts/a-clock-it-cannot-keep.md',
  'content/comparisons/larch-steps.md',
];

let project: TestProject;
beforeAll(() => {
  project = copyProject('retests');
  for (const file of FOLLOWING) project.edit(file, '\ntitle: ', '\nretests: follow\ntitle: ');
});

const quiet = { out: () => {}, err: (text: string) => expect.unreachable(text) };

function testAgain({ name, old, seed, warmer, otherwise, gap }: Retest, date: string): void {
  const { options, ...run }: DemoRun = DEMO_RUNS[name];
  // The row that the demonstration's logger lost is of that log.
  const { ragged: _, ...dialect } = run.dialect;
  const again: DemoRun = {
    ...run,
    dialect,
    options: { ...options, seed, room: { ...options.room, start: options.room.start + warmer }, ...otherwise },
  };
  const { rows: all, truth } = simulate(again.options);
  const rows = gap ? all.filter(({ elapsed }) => elapsed < gap[0] || elapsed >= gap[1]) : all;
  const path = (what: string) => `data/larch-2/${name}-${what}-${date}.csv`;
  writeFileSync(join(project.root, path('soak')), write(rows, again.dialect));
  const imaged = name === 'rated' || name === 'fast';
  const image = imaged ? ['--image', path('thermal')] : [];
  const tables = name === 'second' ? [] : ['--scores', path('scores'), '--surface', path('surface'), ...image];
  if (name !== 'second') {
    writeFileSync(join(project.root, path('scores')), scoresTable(again, truth, Date.parse(`${date}T15:30:00Z`)));
    writeFileSync(join(project.root, path('surface')), surfaceTable(again, truth, imaged));
    if (imaged) writeFileSync(join(project.root, path('thermal')), imageTable(again, truth));
  }
  expect(retestRun(project.root, [old, path('soak'), '--date', date, ...tables], quiet)).toBe(0);
}

async function problems(): Promise<readonly Problem[]> {
  return (await readPresent(project.root)).manifest.problems;
}

/** Pastes the block of each message that has one into the front matter that it names. */
function paste(found: readonly Problem[]): void {
  for (const { place, remedy = '' } of found) {
    const block = /below `corrections:`.*\n([\s\S]*?)\n {6}or for all/.exec(remedy)?.[1];
    if (block === undefined) continue;
    const path = join(project.root, place.file);
    const entry = block.split('\n').map((line) => line.slice(6));
    writeFileSync(path, withCorrections(readFileSync(path, 'utf8'), entry));
  }
}

describe('ten retests of the demonstration', () => {
  test.each(ROUNDS.map((round, index) => [DAYS[index]!, round] as const))('%s: one round', async (date, round) => {
    for (const retest of round) testAgain(retest, date);
    const asked = await problems();
    const errors = asked.filter(({ severity }) => severity === 'error');
    expect(errors.length).toBeGreaterThan(0);
    expect(new Set(errors.map(({ rule }) => rule))).toEqual(new Set(['published-number']));
    // One block for each note, and none twice.
    const blocks = errors.filter(({ remedy = '' }) => remedy.includes('below `corrections:`')).map(({ place }) => place.file);
    expect(blocks).toEqual([...new Set(blocks)]);
    for (const { remedy = '' } of errors) expect(remedy.match(/since: (\S+)/)?.[1] ?? date).toBe(date);
    paste(asked);
    const left = await problems();
    // What is true and not for certain is a list of its own; a gap stays one.
    expect(
      left
        .filter(({ rule }) => rule !== 'stated-narrow' && rule !== 'time-gap')
        .map(({ place, rule, found }) => `${place.file}:${place.line} ${rule} ${found}`),
    ).toEqual([]);
    // The script asks for nothing, and takes the reason where one is given.
    const said: string[] = [];
    expect(await correctNotes(project.root, [], { out: (text) => said.push(text), err: quiet.err })).toBe(0);
    expect(said.join('')).not.toContain('content/notes/');
    expect(said.join('')).toContain('Cues that need a new still');
  });

  test('the old runs stay, and each says what followed', async () => {
    const { manifest } = await readPresent(project.root);
    const pages = manifest.pages.map(({ path }) => path);
    for (const { old } of ROUNDS.flat()) expect(pages).toContain(`runs/${old}/`);
  });
});
