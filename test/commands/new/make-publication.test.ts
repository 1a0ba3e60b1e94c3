import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, inject, it } from 'vitest';
import { parse } from 'yaml';
import { makePublication } from '../../../src/commands/new/make-publication.ts';
import { dataFiles, readProject } from '../../../src/compute/project/read-project.ts';
import { FRONT_MATTER } from '../../../src/register/files/front-matter-shapes.ts';
import { readRegister } from '../../../src/register/read.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';
import { tree } from '../../site/project.ts';

const COMMANDS = ['build', 'check'];

function made(root: string, logs: readonly string[] = []) {
  let [out, err] = ['', ''];
  const output = { out: (text: string) => (out += text), err: (text: string) => (err += text) };
  const code = makePublication({ root, logs, commands: COMMANDS }, output);
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
    expect(read('.ci/check')).toContain('\nnpm run check\n');
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
    expect(err).toBe('package.json is there, and is no JSON object. Mend it or move it away, then run the same command again.\n');
  });

  it.each(Object.keys(FRONT_MATTER))('has an example of %s that its schema takes, and that names the schema', (folder) => {
    const root = emptyFolder('examples');
    const { read } = made(root);
    const text = read(`examples/${folder}.md`);
    const [, yaml = ''] = /^---\n(.*?)^---$/ms.exec(text) ?? [];
    const [, named = ''] = /\$schema=(\S+)/.exec(text) ?? [];
    const validate = new Ajv({ allowUnionTypes: true, strictTypes: false }).compile(JSON.parse(read(`examples/${named}`)));
    const values = parse(yaml, { schema: 'core' });
    expect(Object.keys(values).length).toBeGreaterThan(0);
    const wrong = validate(values) ? [] : validate.errors!.filter(({ keyword }) => keyword !== 'type');
    expect(wrong).toEqual([]);
  });

  it('copies logs from elsewhere, writes device, setup, runs and a draft that names them', () => {
    const root = emptyFolder('from-logs');
    const logs = emptyFolder('larch-2');
    cpSync(join(DEMONSTRATION, 'data/larch-2'), logs, { recursive: true });
    const { code, err, out, read } = made(root, [join(logs, 'rated-soak.csv'), join(logs, 'fast-soak.csv')]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('wrote content/notes/first-note.md');
    expect(read('data/larch-2/rated-soak.csv')).toBe(readFileSync(join(logs, 'rated-soak.csv'), 'utf8'));
    for (const path of ['devices/larch-2.md', 'setups/larch-2-bench.md', 'runs/rated-soak.md', 'runs/fast-soak.md'])
      expect(existsSync(join(root, 'content', path)), path).toBe(true);
    expect(read('content/notes/first-note.md')).toContain('runs:\n  fast_soak: fast-soak\n  rated_soak: rated-soak\n');
  });

  it('says which log is not there, and then makes nothing', () => {
    const root = emptyFolder('missing');
    const { code, err } = made(root, [join(root, 'none.csv')]);
    expect([code, err]).toEqual([1, `There is no file ${join(root, 'none.csv')}.\n`]);
    expect(existsSync(root)).toBe(false);
  });
});
