import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { writeList } from '../../../src/commands/stills/list.ts';
import { writePictures } from '../../../src/commands/stills/write-pictures.ts';
import { LOOKS } from '../../../src/plots/stills/looks.ts';

it('draws a PNG anew after the code or the packages that draw it changed, and else takes the last', async () => {
  const root = mkdtempSync(join(tmpdir(), 'soakproof-write-'));
  const picture = { name: '1', title: 'A', alt: 'a', body: '<svg width="9" height="9"></svg>', foot: { of: '', address: '' } };
  const asked = { looks: LOOKS.slice(0, 1), widths: [1920] };
  const draw = async (before: string, folder: string, code = 'one'): Promise<number> => {
    const places = { before: join(root, before), folder: join(root, folder) };
    const { list, drawn } = await writePictures([picture], asked, places, () => {}, code);
    writeList(places.folder, list);
    return drawn;
  };
  expect([await draw('none', 'first'), await draw('first', 'second')]).toEqual([2, 0]);
  expect(await draw('second', 'third', 'two')).toBe(1);
  rmSync(root, { recursive: true });
});
