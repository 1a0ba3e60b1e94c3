import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keepOthers } from '../../../src/commands/stills/keep.ts';
import { type Drawn, digestAt, listIn, writeList } from '../../../src/commands/stills/list.ts';
import { LOOKS } from '../../../src/plots/stills/looks.ts';

let root: string;
let places: { folder: string; before: string };
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-keep-'));
  places = { folder: join(root, 'next'), before: join(root, 'stills') };
  for (const folder of Object.values(places)) mkdirSync(folder);
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function write(folder: string, path: string, text: string): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}

/** Files as an earlier run left them, with their list. */
function drawnBefore(...paths: readonly string[]): Drawn {
  for (const path of paths) write(places.before, path, `old ${path}`);
  const list = Object.fromEntries(paths.map((path) => [path, { from: 'x', sha256: digestAt(join(places.before, path))! }]));
  writeList(places.before, list);
  return list;
}

const light = { looks: LOOKS.filter(({ name }) => name === 'light'), widths: [1920] };
const inNext = (path: string) => existsSync(join(places.folder, path));

describe('commands/stills/keep', () => {
  it('keeps what an author laid there, links as links', () => {
    drawnBefore('svg/light/1.svg');
    write(places.before, 'my-cut.txt', 'mine');
    write(places.before, 'svg/light/retouched.svg', 'mine');
    symlinkSync('/nowhere', join(places.before, 'footage'));
    expect(keepOthers({}, light, places)).toEqual({});
    expect(['my-cut.txt', 'svg/light/retouched.svg'].filter(inNext)).toHaveLength(2);
    expect(() => readFileSync(join(places.folder, 'footage'))).toThrow('ENOENT');
    rmSync(join(places.folder, 'footage'));
  });

  it('keeps looks and sizes that were not asked for, and lists them as ours', () => {
    const list = drawnBefore('svg/dark/1.svg', '3840x2160/light/1.png', '1920x1080/light/1.png');
    const kept = keepOthers({}, light, places);
    expect(Object.keys(kept)).toEqual(['3840x2160/light/1.png', 'svg/dark/1.svg']);
    expect(kept['svg/dark/1.svg']).toEqual(list['svg/dark/1.svg']);
    expect(['svg/dark/1.svg', '3840x2160/light/1.png', '1920x1080/light/1.png'].map(inNext)).toEqual([true, true, false]);
  });

  it('leaves behind what we drew and a script no longer has, unless somebody changed it', () => {
    drawnBefore('svg/light/1.svg', 'svg/light/2.svg', 'comment.txt');
    write(places.before, 'svg/light/2.svg', 'retouched');
    expect(keepOthers({}, light, places)).toEqual({});
    expect(['svg/light/1.svg', 'svg/light/2.svg', 'comment.txt'].map(inNext)).toEqual([false, true, false]);
  });

  it('never writes over what is new', () => {
    drawnBefore();
    write(places.before, 'video.txt', 'old');
    write(places.folder, 'video.txt', 'new');
    const ours = { 'video.txt': { from: 'y', sha256: 'y' } };
    expect(keepOthers(ours, light, places)).toEqual(ours);
    expect(readFileSync(join(places.folder, 'video.txt'), 'utf8')).toBe('new');
  });

  it('takes a folder without a list, or with a torn one, for an author’s', () => {
    write(places.before, 'svg/light/1.svg', 'whose?');
    write(places.before, 'drawn-from.json', '{');
    expect(keepOthers({}, light, places)).toEqual({});
    expect([inNext('svg/light/1.svg'), inNext('drawn-from.json')]).toEqual([true, false]);
    expect(listIn(places.before)).toEqual({});
  });

  it('keeps what lies elsewhere behind a link', () => {
    write(join(root, 'elsewhere'), 'my-cut.txt', 'mine');
    rmSync(places.before, { recursive: true });
    symlinkSync(join(root, 'elsewhere'), places.before);
    keepOthers({}, light, places);
    expect(inNext('my-cut.txt')).toBe(true);
  });

  it('has nothing to keep the first time', () => {
    rmSync(places.before, { recursive: true });
    expect(keepOthers({}, light, places)).toEqual({});
  });
});
