import { describe, expect, it } from 'vitest';
import { packageText } from '../../../src/commands/new/package-text.ts';

const OURS = { name: 'my-bench', commands: ['build', 'check'], tool: 'file:tool.tgz', allowScripts: { node: true } };

describe('commands/new/package-text', () => {
  it('adds scripts and the dependency alone: other scripts of the folder may need what Node takes a .js file for', () => {
    const result = packageText('{\n  "name": "theirs",\n  "scripts": { "check": "soakproof check" }\n}\n', OURS);
    expect('text' in result && JSON.parse(result.text)).toEqual({
      name: 'theirs',
      scripts: { check: 'soakproof check', build: 'soakproof build' },
      dependencies: { soakproof: 'file:tool.tgz' },
      allowScripts: { node: true },
    });
    expect(result).toMatchObject({ notes: [] });
  });

  it.each([
    ['tabs', '{\n\t"name": "a"\n}\n', /^{\n\t"name": "a",\n\t"scripts": {\n\t\t"build"/],
    ['four blanks', '{\n    "name": "a"\n}\n', /^{\n {4}"name": "a",\n {4}"scripts"/],
    ['other line ends, and none at the end', '{\r\n  "name": "a"\r\n}', /^{\r\n {2}"name": "a",\r\n {2}"scripts"[\s\S]*\r\n}$/],
  ])('keeps %s', (_, before, expected) => {
    const result = packageText(before, OURS);
    expect('text' in result && result.text).toMatch(expected);
  });

  it('leaves every byte where nothing is missing', () => {
    const before =
      '{"scripts":{"build":"soakproof build","check":"soakproof check"},   "allowScripts":{"node":false},"dependencies":{"soakproof":"1.0.0"}}';
    expect(packageText(before, OURS)).toEqual({ text: before, notes: [] });
  });

  it('names each script that has another meaning there', () => {
    const result = packageText('{ "scripts": { "build": "make" } }', OURS);
    expect(result).toMatchObject({
      notes: [
        'package.json has a script `build` of its own, which stays. Where a text says `npm run build`, run `npx soakproof build`.',
      ],
    });
    expect('text' in result && JSON.parse(result.text).scripts.build).toBe('make');
  });

  it.each(['[]', 'null', '{', '{ "scripts": "make" }'])('says that %s is no package.json', (before) => {
    expect(packageText(before, OURS)).toMatchObject({ fault: expect.stringContaining('is no JSON object') });
  });
});
