/** A publication that an earlier version made, read by the code of today. */
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { changes } from '../../../src/commands/changes/changes.ts';
import { correctNotes } from '../../../src/commands/correct/correct-notes.ts';
import { publishNote } from '../../../src/commands/publish/publish-note.ts';
import { compute } from '../../../src/compute/compute.ts';
import { toolVersion } from '../../../src/compute/store/places.ts';
import { HERE } from '../../site/project.ts';

const NOTE = 'content/notes/a-faster-clock.md';
let root: string;

beforeAll(() => {
  root = mkdtempSync(join(inject('scratch'), 'earlier-version-'));
  cpSync(join(HERE, 'test/fixtures/publication-0.1.0'), root, { recursive: true });
  symlinkSync(join(HERE, 'src'), join(root, 'src'), 'dir');
  symlinkSync(join(HERE, 'node_modules'), join(root, 'node_modules'), 'dir');
});

const wrong = async () => (await compute(root, 'site')).problems.filter(({ severity }) => severity === 'error');

async function printed(command: typeof changes, args: readonly string[]) {
  let [out, err] = ['', ''];
  const code = await command(root, args, { out: (text) => (out += text), err: (text) => (err += text) });
  return { code, out, err };
}

describe('a publication of version 0.1.0', () => {
  it('is read whole, and what prints differently now is told, with the methods as the cause', async () => {
    const errors = await wrong();
    expect(errors.map(({ rule, place: { file } }) => `${file}: ${rule}`)).toEqual([`${NOTE}: published-number`]);
    const { code, out } = await printed(changes, []);
    expect(code).toBe(0);
    expect(out).toContain(`  the methods: these are those of version ${toolVersion()}\n`);
    expect(out).toContain('  fast.time_to_steady_state  11.0 min  →  10.9 min  by −0.15 min');
    expect(out).not.toContain('data/');
  });

  it('names the data, and not the methods, where the data is another too', async () => {
    const log = join(root, 'data/larch-2/rated.csv');
    const text = readFileSync(log, 'utf8');
    writeFileSync(log, text.replaceAll('6.4', '6.6'));
    const { out } = await printed(changes, []);
    writeFileSync(log, text);
    expect(out).toContain('  data/larch-2/rated.csv\n');
    expect(out).not.toContain('the methods');
  });

  it('goes out again once its author gives the reason', async () => {
    expect(await printed(correctNotes, ['--reason', 'another way to tell the beginning of steady state'])).toMatchObject({
      code: 0,
    });
    expect(await wrong()).toEqual([]);
    expect((await printed(publishNote, [NOTE, '--date', '2026-12-01'])).code).toBe(0);
    expect(await printed(changes, [])).toEqual({ code: 0, out: 'Nothing changed since publication.\n', err: '' });
  });

  it('is not published where nothing holds a number, if its author asks for that', async () => {
    const strict = await printed(publishNote, [NOTE, '--date', '2026-12-02', '--strict']);
    expect(strict.code).toBe(1);
    expect(strict.err).toContain(`${NOTE} is not published: nothing holds 1 of its numbers\n`);
    const { err } = await printed(publishNote, [NOTE, '--date', '2026-12-02']);
    expect(err).toContain('Nothing holds 1 of its numbers. Nobody will hear of it when it is no longer true.');
  });

  it('is warned of where its published state is lost', async () => {
    rmSync(join(root, 'content/published'), { recursive: true });
    const { problems } = await compute(root, 'site');
    expect(problems.map(({ severity, rule }) => `${severity} ${rule}`)).toEqual(['warning unprotected', 'warning unheld-number']);
  });
});
