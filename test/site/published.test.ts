import { spawnSync } from 'node:child_process';
import { readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NoteChanges } from '../../src/compute/published-state/changes.ts';
import { DEMONSTRATION } from '../demonstration-folder.ts';
import { copyFolder, copySmall, type TestProject, tree } from './project.ts';

const SECOND = 'content/notes/a-second-larch.md';
const FIRST = 'content/notes/a-clock-it-cannot-keep.md';
const SCRIPT = 'content/scripts/a-clock-it-cannot-keep.md';
const SECOND_LOG = 'data/larch-2/second-rated-soak.csv';
const BRISK_LOG = 'data/larch-2/brisk-soak.csv';
const AFTER_DATE = 'date: 2026-03-28\n';

let project: TestProject;
/** A script with a time that a log cut short does not tell. */
const SPOKEN = `---
title: Brisk, spoken
date: 2026-03-22
status: held back
pace: 145 words per minute
runs:
  brisk: larch-brisk
---

:::cue{at="0:00"}
The device on its stand.
:::

Its metal climbs for :stated[about half an hour]{is="brisk.time_to_steady_state"}.

:::cue{at="0:20"}
The lid.
:::

Then the brisk one settles at :value[brisk.steady_temperature].
`;

/** The small project, where the second specimen is in one note alone, and the script has a run with it that the other note has too. */
beforeAll(() => {
  project = copySmall('published');
  copyFolder(DEMONSTRATION, project.root, 'content/runs/larch-brisk.md');
  for (const file of [FIRST, 'content/comparisons/larch-steps.md'])
    project.edit(file, 'second: larch-second', 'second: larch-brisk');
  project.edit(FIRST, 'title: One setting, two specimens', 'title: One device, its settings');
  project.write(SCRIPT, SPOKEN);
  for (const note of [SECOND, FIRST, SCRIPT]) {
    const ran = project.run('publish', {}, [note, '--date', '2026-04-02']);
    expect(ran.err).toBe('');
    expect(ran.code).toBe(0);
  }
});
afterAll(() => project.remove());

function changes(...args: string[]): readonly NoteChanges[] {
  const ran = project.run('changes', {}, ['--json', ...args]);
  expect(ran.err).toBe('');
  return (JSON.parse(ran.out) as { notes: NoteChanges[] }).notes;
}

/** Warms the chip in a log: the first number with one decimal of each row. Bytes are kept, whatever their encoding; gives what was there. */
function warmer(log: string, kelvins: number): Buffer {
  const bytes = readFileSync(join(project.root, log));
  const text = bytes.toString('latin1');
  const warmed = text.replaceAll(
    /^([^,;]*[,;]\s*)(\d\d)([.,]\d)(?=[,;])/gm,
    (_all, head: string, degrees: string, tenths: string) => `${head}${Number(degrees) + kelvins}${tenths}`,
  );
  expect(warmed).not.toBe(text);
  writeFileSync(join(project.root, log), warmed, 'latin1');
  return bytes;
}

/** The first minutes of a log of one row a second. */
function cutShort(log: Buffer): Buffer {
  return Buffer.from(log.toString('latin1').split('\n').slice(0, 900).join('\n'), 'latin1');
}

describe('npm run publish', () => {
  it('sets the status and stores what is printed; nothing else changes', () => {
    const states = tree(join(project.root, 'content/published'));
    expect([...states.keys()]).toEqual([
      'notes-a-clock-it-cannot-keep.json',
      'notes-a-second-larch.json',
      'scripts-a-clock-it-cannot-keep.json',
    ]);
    const state = JSON.parse(project.read('content/published/notes-a-second-larch.json')) as Record<string, unknown>;
    expect(state).toMatchObject({ format: 1, of: 'notes/a-second-larch', date: '2026-04-02', history: [] });
    expect(project.read(SCRIPT)).toContain('status: published\n');
    expect(project.run('check').err).not.toMatch(/unprotected|published-/);
    expect(changes()).toEqual([]);
  });

  it('refuses a note with errors, a day that does not exist, and a note that is not there', () => {
    const text = project.read(SECOND);
    project.edit(SECOND, 'second.steady_temperature]', 'second.steddy_temperature]');
    expect(project.run('publish', {}, [SECOND])).toMatchObject({
      code: 1,
      err: expect.stringMatching(/steddy_temperature.*\n[\s\S]*is not published/),
    });
    project.write(SECOND, text);
    expect(project.run('publish', {}, [SECOND, '--date', '2026-02-30'])).toMatchObject({ code: 2 });
    expect(project.run('publish', {}, ['a-secund-larch']).err).toContain('there is no note a-secund-larch');
    expect(project.run('publish', {}, [SECOND, '--date', '2026-04-01']).err).toContain('was published on 2026-04-02');
  });
});

describe('a published note whose data changes', () => {
  beforeAll(() => {
    project.run('check');
    warmer(SECOND_LOG, 5);
  });

  it('is told by changes: exactly the sentences that change, before and after', () => {
    const told = changes();
    expect(told.map(({ of }) => of)).toEqual(['notes/a-second-larch']);
    const [note] = told;
    expect(note?.sentences.map(({ before, after }) => [before, after])).toEqual(changedSentences());
    expect(note).toMatchObject({ noLongerHeld: [], added: [], removed: [] });
    expect(note?.plots.map(({ how }) => how)).toEqual(['changed']);
    expect(changes('--since', 'check')).toEqual(told);
    expect(project.run('changes').out).toContain('was  It settles at');
  });

  it('stops the build and says what to write; with the reasons it goes on, and the page shows was, is, why', () => {
    const stopped = project.run('build');
    expect(stopped.code).toBe(1);
    expect(stopped.err).toMatch(
      /^content\/notes\/a-second-larch\.md:\d+:\d+: error: a published number prints differently, here and in \d+ more places: `second\.steady_temperature` was .* and is .*; data\/larch-2\/second-rated-soak\.csv changed since/m,
    );
    // One log moved them all: one reason is asked for, with a list of the numbers.
    const [block, ...others] = [
      ...stopped.err.matchAll(/ {6}- numbers:\n(?: {10}- number: .*\n {12}now: .*\n)+ {8}since: \d{4}-\d\d-\d\d\n {8}reason: why/g),
    ].map(([text]) => text);
    expect(others).toEqual([]);
    expect(block!.match(/- number: /g)!.length).toBeGreaterThan(2);
    const written = block!
      .replace(/since: \S+/, 'since: 2026-05-02')
      .replace('reason: why', 'reason: The sensor was set 5 K too low.');
    project.edit(SECOND, AFTER_DATE, `${AFTER_DATE}corrections:\n${written}\n`);
    const built = project.run('build');
    expect(built.err).not.toContain(': error:');
    expect(built.code).toBe(0);
    const html = project.read('dist/notes/a-second-larch/index.html');
    const [, shown = ''] = html.split('What was corrected since');
    expect(shown).toContain('2026-05-02');
    expect(shown).toContain('The sensor was set 5 K too low.');
    expect(shown).toMatch(/was <strong[^>]*>\d\d\.\d °C<\/strong>, is <strong[^>]*>\d\d\.\d °C<\/strong>/);
    expect(shown).toMatch(/steady temperature of Rated setting, second specimen: was/);
    expect(shown.match(/The sensor was set 5 K too low\./g)).toHaveLength(1);
    const [, sign = ''] = /data-n="\d+"[^>]*>[^<]*<\/a><a class="corrected" href="#(corrected:[^"]+)"/.exec(html) ?? [];
    expect(shown).toContain(`id="${sign}"`);
    expect(project.read('dist/corrections.xml')).toContain('The sensor was set 5 K too low.');
    expect(project.read('dist/notes/a-second-larch/corrections.txt')).toMatch(
      /^2026-05-02: steady temperature of Rated setting, second specimen, .* is now .*\.$/m,
    );
  });

  it('is closed by another publication and kept in the history', () => {
    expect(project.run('publish', {}, [SECOND, '--date', '2026-05-03']).code).toBe(0);
    project.write(SECOND, project.read(SECOND).replace(/^corrections:\n(?: {6}.*\n)+/m, ''));
    const state = JSON.parse(project.read('content/published/notes-a-second-larch.json')) as { history: { closed: string }[] };
    expect(state.history.length).toBeGreaterThan(2);
    expect(state.history.every(({ closed }) => closed === '2026-05-03')).toBe(true);
    expect(project.run('check').err).not.toContain(': error:');
  });
});

describe('a published note that is held back again', () => {
  it('leaves no trace in the site: neither its words and numbers, nor its corrections, feed entries and addresses', () => {
    const text = project.read(SECOND);
    const reason = 'A reason that only the held-back note has.';
    project.write(
      SECOND,
      text
        .replace('status: published', 'status: held back')
        .replace(
          AFTER_DATE,
          `${AFTER_DATE}was: notes/an-elder-name/\ncorrections:\n  - number: second.load_power\n    now: 6.63 W\n    since: 2026-05-04\n    reason: ${reason}\n`,
        ),
    );
    const built = project.run('build');
    expect(built.err).toContain('the published address notes/a-second-larch/ would vanish');
    // Only where the published state goes too does the site do without the address.
    const state = 'content/published/notes-a-second-larch.json';
    const kept = project.read(state);
    unlinkSync(join(project.root, state));
    expect(project.run('build').err).not.toContain(': error:');
    const dist = tree(join(project.root, 'dist'));
    const traces = [
      'a-second-larch',
      'an-elder-name',
      'The second one runs warmer',
      reason,
      'The sensor was set 5 K too low.',
      'larch-second',
    ];
    const found = [...dist].flatMap(([path, bytes]) =>
      traces.filter((trace) => path.includes(trace) || bytes.includes(trace)).map((trace) => `${path}: ${trace}`),
    );
    expect(found).toEqual([]);
    project.write(state, kept);
    project.write(SECOND, text);
  });
});

describe('a published script whose data changes', () => {
  it('keeps its words; what the data no longer bears is a correction with its cue time, until it is recorded again', () => {
    const log = warmer(BRISK_LOG, -3);
    const told = project.run('check').err.split('\n');
    expect(told.some((line) => line.startsWith(FIRST) && line.includes(': error:'))).toBe(true);
    expect(told.filter((line) => line.startsWith(SCRIPT) && line.includes(': error:'))).toEqual([]);
    // The note of the same run stops the build by itself; the script is looked at alone.
    unlinkSync(join(project.root, FIRST));
    unlinkSync(join(project.root, 'content/published/notes-a-clock-it-cannot-keep.json'));
    project.edit(SECOND, '[the first note](../a-clock-it-cannot-keep/)', 'the first note');
    const built = project.run('build');
    expect(built.err).not.toContain(': error:');
    const page = project.read('dist/scripts/a-clock-it-cannot-keep/index.html');
    expect(page).toContain('What was corrected since');
    const text = project.read('dist/scripts/a-clock-it-cannot-keep/corrections.txt');
    expect(text).toMatch(/^\d{4}-\d\d-\d\d at \d+:\d\d: .+ is now .+\.$/m);
    expect(project.read('dist/corrections.xml')).toContain('scripts/a-clock-it-cannot-keep/');
    const open = JSON.stringify(text.match(/^\d{4}-.*$/gm));

    // Words that do not hold cannot be recorded anew as they are; where they hold, publication closes what was open.
    writeFileSync(join(project.root, BRISK_LOG), cutShort(log));
    const absent = project.run('build');
    expect(absent.err).not.toContain(': error:');
    expect(project.read('dist/scripts/a-clock-it-cannot-keep/index.html')).toMatch(/about half an hour/);
    expect(project.run('publish', {}, [SCRIPT, '--date', '2026-06-01'])).toMatchObject({
      code: 1,
      err: expect.stringMatching(/time_to_steady_state[\s\S]*is not published: mend its errors first/),
    });
    writeFileSync(join(project.root, BRISK_LOG), log);
    warmer(BRISK_LOG, 1);
    expect(project.run('build').err).not.toContain(': error:');
    expect(project.read('dist/scripts/a-clock-it-cannot-keep/corrections.txt').match(/^\d{4}-.*$/gm)).not.toEqual(open);
    expect(project.run('publish', {}, [SCRIPT, '--date', '2026-06-01']).err).toBe('');
    const state = JSON.parse(project.read('content/published/scripts-a-clock-it-cannot-keep.json')) as {
      history: { closed: string }[];
    };
    expect(state.history.length).toBeGreaterThan(0);
    expect(state.history.every(({ closed }) => closed === '2026-06-01')).toBe(true);
    expect(project.run('check').err).not.toContain(': error:');
    expect(changes().filter(({ of }) => of.startsWith('scripts/'))).toEqual([]);
  });
});

describe('published states and addresses', () => {
  it('a state that was edited by hand stops the build', () => {
    const path = 'content/published/notes-a-second-larch.json';
    const text = project.read(path);
    project.write(path, text.replace('"verdict":"printed"', '"verdict":"holds"'));
    const ran = project.run('check');
    expect(ran.code).toBe(1);
    expect(ran.err).toMatch(/^content\/published\/notes-a-second-larch\.json:1:1: error: /m);
    project.write(path, text);
  });

  it('an address that would vanish stops the build until it leads on', () => {
    const text = project.read(SECOND);
    unlinkSync(join(project.root, SECOND));
    project.write('content/notes/the-warmer-one.md', text);
    const stopped = project.run('build');
    expect(stopped.code).toBe(1);
    expect(stopped.err).toContain('the published address notes/a-second-larch/ would vanish');
    project.edit('content/notes/the-warmer-one.md', AFTER_DATE, `${AFTER_DATE}was: notes/a-second-larch/\n`);
    const built = project.run('build');
    expect(built.err).not.toContain(': error:');
    expect(built.code).toBe(0);
    expect(project.read('dist/notes/a-second-larch/index.html')).toContain('content="0; url=../../notes/the-warmer-one/"');
    const plot = 'plots/plot-trace-soc-first-second.svg';
    expect(project.read(`dist/notes/a-second-larch/${plot}`)).toBe(project.read(`dist/notes/the-warmer-one/${plot}`));
    unlinkSync(join(project.root, 'content/notes/the-warmer-one.md'));
    project.write(SECOND, text);
  });

  it('changes tells what an earlier revision had published', () => {
    const git = (...args: string[]) => {
      const identity = ['-c', 'user.name=A Tester', '-c', 'user.email=tester@bench.example'];
      expect(spawnSync('git', [...identity, ...args], { cwd: project.root }).status).toBe(0);
    };
    git('init', '-q');
    git('add', 'content');
    git('commit', '-qm', 'As published');
    expect(changes('--since', 'HEAD')).toEqual(changes());
    expect(project.run('changes', {}, ['--since', 'no-such-thing'])).toMatchObject({
      code: 1,
      err: expect.stringContaining('no revision'),
    });
  });
});

/** The sentences of the note that print a changed number, from the two pages' own text: those of the second specimen's temperatures. */
function changedSentences(): [string, string][] {
  const state = JSON.parse(project.read('content/published/notes-a-second-larch.json')) as {
    entries: { kind: string; expression: string; sentence: string; shown: string }[];
  };
  // Warmed by 5 K throughout: temperatures and rises of the chip go up by 5, the headroom goes down by 5; board and power stay.
  const moved = /second\.(?:steady_temperature|temperature_rise(?!\.board)|idle_temperature|throttle_headroom)/;
  const after = new Map<string, string>();
  for (const { kind, expression, sentence, shown } of state.entries) {
    if (kind === 'highlight' || !moved.test(expression)) continue;
    const by = expression.includes('headroom') ? -5 : 5;
    const [digits = ''] = /[\d.]+/.exec(shown) ?? [];
    const now = shown.replace(digits, (Number(digits) + by).toFixed(1));
    after.set(sentence, (after.get(sentence) ?? sentence).replace(shown, now));
  }
  return [...after];
}
