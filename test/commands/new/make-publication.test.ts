import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, inject, it } from 'vitest';
import { parse } from 'yaml';
import { makePublication, nextSteps } from '../../../src/commands/new/make-publication.ts';
import { dataFiles, readProject } from '../../../src/compute/project/read-project.ts';
import { FRONT_MATTER } from '../../../src/register/files/front-matter-shapes.ts';
import { readRegister } from '../../../src/register/read.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';
import { tree } from '../../site/project.ts';

const COMMANDS = ['build', 'check'];

/** A tool with its packed file beside it. */
function packedTool(): string {
  const folder = mkdtempSync(join(inject('scratch'), 'tool-'));
  writeFileSync(join(folder, 'package.json'), '{ "version": "1.2.3", "allowScripts": { "node": true } }');
  writeFileSync(join(folder, 'soakproof-1.2.3.tgz'), '');
  return folder;
}

function made(root: string, logs: readonly string[] = [], tool = packedTool()) {
  let [out, err] = ['', ''];
  const output = { out: (text: string) => (out += text), err: (text: string) => (err += text) };
  const code = makePublication({ root, logs, commands: COMMANDS, tool }, output);
  return { code, out, err, read: (path: string) => readFileSync(join(root, path), 'utf8') };
}

const emptyFolder = (name: string) => join(mkdtempSync(join(inject('scratch'), 'new-')), name);

function problemsOf(root: string): string[] {
  const { problems } = readRegister(readProject(root).content, dataFiles(root));
  return problems.map(({ rule, place: { file } }) => `${file}: ${rule}`);
}

describe('commands/new/make-publication', () => {
  it('makes a publication of an empty folder, in which nothing is wrong', () => {
    const root = emptyFolder('my-bench');
    const { code, err, read } = made(root);
    expect([code, err]).toEqual([0, '']);
    expect(JSON.parse(read('package.json'))).toMatchObject({
      name: 'my-bench',
      private: true,
      scripts: { build: 'soakproof build', check: 'soakproof check' },
      allowScripts: { node: true },
    });
    expect(problemsOf(root)).toEqual([]);
    expect(read('.ci/check')).toContain('\nnpx --no soakproof check\n');
  });

  it('tells to install the packages, unless they are there', () => {
    const root = emptyFolder('here');
    made(root);
    expect(nextSteps(root, 'here', false)).toContain('cd here\n  npm install\n');
    mkdirSync(join(root, 'node_modules', 'soakproof'), { recursive: true });
    expect(nextSteps(root, '', true)).not.toContain('npm install');
  });

  it('writes nothing over what is there, and adds to package.json what it lacks', () => {
    const root = emptyFolder('mine');
    mkdirSync(root);
    writeFileSync(join(root, 'astro.config.mjs'), 'mine');
    writeFileSync(join(root, 'package.json'), '{ "scripts": { "build": "mine" }, "dependencies": { "soakproof": "0.1.0" } }');
    const { read } = made(root);
    expect(read('astro.config.mjs')).toBe('mine');
    expect(JSON.parse(read('package.json'))).toMatchObject({
      scripts: { build: 'mine', check: 'soakproof check' },
      dependencies: { soakproof: '0.1.0' },
    });
    const before = tree(root);
    expect(made(root).code).toBe(0);
    expect(tree(root)).toEqual(before);
  });

  it('stops at a package.json that it cannot read, and leaves it as it is', () => {
    const root = emptyFolder('broken');
    mkdirSync(root);
    writeFileSync(join(root, 'package.json'), '{');
    const { code, err, read } = made(root);
    expect([code, read('package.json')]).toEqual([1, '{']);
    expect(err).toBe(
      'package.json is there, and is no JSON object. Mend it or move it away, then run the same command again.\nNothing was written.\n',
    );
  });

  it.each(Object.keys(FRONT_MATTER))('has an example of %s that its schema takes, and that names the schema', (folder) => {
    const root = emptyFolder('examples');
    const { read } = made(root);
    const text = read(`examples/${folder}.md`);
    const [, yaml = ''] = /^---\n(.*?)^---$/ms.exec(text) ?? [];
    // From the publication's folder: the line stays true in the copy below content/.
    const [, named = ''] = /^# .*JSON Schema: (\S+)$/m.exec(text) ?? [];
    const validate = new Ajv({ allowUnionTypes: true, strictTypes: false }).compile(JSON.parse(read(named)));
    const values = parse(yaml, { schema: 'core' });
    expect(Object.keys(values).length).toBeGreaterThan(0);
    const wrong = validate(values) ? [] : validate.errors!.filter(({ keyword }) => keyword !== 'type');
    expect(wrong).toEqual([]);
  });

  it('copies logs from elsewhere, writes device, setup, runs and a draft that shows them', () => {
    const root = emptyFolder('from-logs');
    const logs = emptyFolder('larch-2');
    cpSync(join(DEMONSTRATION, 'data/larch-2'), logs, { recursive: true });
    const { code, err, out, read } = made(root, [join(logs, 'rated-soak.csv'), join(logs, 'fast-soak.csv')]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('wrote content/notes/first-note.md');
    expect(read('data/logs/rated-soak.csv')).toBe(readFileSync(join(logs, 'rated-soak.csv'), 'utf8'));
    for (const path of ['devices/device.md', 'setups/device-bench.md', 'runs/rated-soak.md', 'runs/fast-soak.md'])
      expect(existsSync(join(root, 'content', path)), path).toBe(true);
    expect(read('content/notes/first-note.md')).toContain('runs:\n  fast_soak: fast-soak\n  rated_soak: rated-soak\n');
    expect(read('content/notes/first-note.md')).toContain('\n\n::plot{kind=trace runs="fast_soak rated_soak"}\n');
  });

  it('says which log is not there, and then makes nothing', () => {
    const root = emptyFolder('missing');
    const { code, err } = made(root, [join(root, 'none.csv')]);
    expect([code, err]).toEqual([1, `There is no file ${join(root, 'none.csv')}, or it may not be read.\nNothing was written.\n`]);
    expect(existsSync(root)).toBe(false);
  });

  it('publishes no name of a folder outside of the publication', () => {
    const root = emptyFolder('nameless');
    const home = emptyFolder('hazel-smith');
    cpSync(join(DEMONSTRATION, 'data/larch-2'), home, { recursive: true });
    made(root, [join(home, 'rated-soak.csv'), join(home, 'fast-soak.csv')]);
    for (const folder of ['content', 'data'])
      for (const [path, bytes] of tree(join(root, folder)))
        expect(`${path} ${bytes.toString('utf8')}`, path).not.toMatch(/hazel|smith/i);
  });

  it('keeps every log of one name, without case, and copies no log twice', () => {
    const [root, logs] = [emptyFolder('twins'), emptyFolder('logs')];
    const paths = ['x/soak.csv', 'y/soak.csv', 'z/SOAK.csv', 'same/soak.csv'].map((path) => join(logs, path));
    for (const path of paths) mkdirSync(dirname(path), { recursive: true });
    const rows = readFileSync(join(DEMONSTRATION, 'data/larch-2/rated-soak.csv'), 'utf8');
    const texts = [rows, `${rows}\n`, `${rows}\n\n`, rows];
    for (const [at, path] of paths.entries()) writeFileSync(path, texts[at]!);
    const { out } = made(root, paths);
    const copied = ['SOAK-3.csv', 'soak-2.csv', 'soak.csv'];
    expect(readdirSync(join(root, 'data/logs')).sort()).toEqual(copied);
    expect(copied.map((name) => readFileSync(join(root, 'data/logs', name), 'utf8'))).toEqual([texts[2], texts[1], texts[0]]);
    expect(out).toContain(`${paths[1]} is copied to data/logs/soak-2.csv: another log has its name.\n`);
    made(root, paths);
    expect(readdirSync(join(root, 'data/logs')).sort()).toEqual(copied);
  });

  it('writes no dependency that a public registry would be asked for: without the packed file it writes nothing', () => {
    const [root, tool] = [emptyFolder('unpacked'), packedTool()];
    expect(JSON.parse(made(root, [], tool).read('package.json')).dependencies.soakproof).toMatch(/^file:.*soakproof-1\.2\.3\.tgz$/);
    rmSync(join(tool, 'soakproof-1.2.3.tgz'));
    const other = emptyFolder('unpacked');
    const { code, err } = made(other, [], tool);
    expect([code, err]).toEqual([
      1,
      'There is no soakproof-1.2.3.tgz beside the tool, by which the publication would install it: run `npm run package` first, then the same command again.\nNothing was written.\n',
    ]);
    expect(existsSync(other)).toBe(false);
  });

  it.each([
    ['file:packs/soakproof-1.2.3.tgz', /^file:.*\/packs\/soakproof-1\.2\.3\.tgz$/],
    ['^1.2.3', /^\^1\.2\.3$/],
  ])('depends on an installed tool as the folder does in which it is installed: %s', (said, expected) => {
    const folder = emptyFolder('installed');
    const tool = join(folder, 'node_modules/soakproof');
    mkdirSync(join(folder, 'packs'), { recursive: true });
    writeFileSync(join(folder, 'packs/soakproof-1.2.3.tgz'), '');
    cpSync(packedTool(), tool, { recursive: true });
    rmSync(join(tool, 'soakproof-1.2.3.tgz'));
    const root = emptyFolder('from-installed');
    expect(made(root, [], tool).err).toContain('npm install PATH/soakproof-1.2.3.tgz');
    writeFileSync(join(folder, 'package.json'), JSON.stringify({ dependencies: { soakproof: said } }));
    expect(JSON.parse(made(root, [], tool).read('package.json')).dependencies.soakproof).toMatch(expected);
  });

  it('takes no log for the folder', () => {
    const log = emptyFolder('soak.csv');
    writeFileSync(log, 'mine');
    const { code, err } = made(log, [log]);
    expect(code).toBe(2);
    expect(err).toBe(`${log} is a file, and FOLDER comes first.\nnpm run new -- FOLDER [LOG…]\n`);
  });

  it('says all that is in the way before it writes anything', () => {
    const root = emptyFolder('blocked');
    mkdirSync(join(root, '.gitignore'), { recursive: true });
    symlinkSync('nowhere', join(root, 'astro.config.mjs'));
    writeFileSync(join(root, 'content'), 'mine');
    const before = readdirSync(root).sort();
    const { code, err } = made(root, [join(root, 'none.csv')]);
    expect(code).toBe(1);
    expect(err.split('\n').sort()).toEqual(
      [
        '',
        '.gitignore is a folder, and a file is to stand there. Move it away, then run the same command again.',
        'astro.config.mjs is a link to what is not there. Move it away, then run the same command again.',
        'content is a file, and a folder is to stand there. Move it away, then run the same command again.',
        `There is no file ${join(root, 'none.csv')}, or it may not be read.`,
        'Nothing was written.',
      ].sort(),
    );
    expect(readdirSync(root).sort()).toEqual(before);
  });
});
