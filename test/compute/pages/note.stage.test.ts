/** Over the demo: where a stated fact of a note is said to stand. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, inject, test } from 'vitest';
import { readManifest } from '../../../src/compute/project/manifest.ts';
import type { HeldNote, NoteModel } from '../../../src/compute/results.ts';
import { openStore } from '../../../src/compute/store/store.ts';

let root: string;
let held: readonly HeldNote[];

beforeAll(() => {
  root = inject('demonstration').root;
  const manifest = readManifest(root, 'site')!;
  const page = manifest.pages.find(({ path }) => path === 'notes/a-clock-it-cannot-keep/')!;
  const model = JSON.parse(Buffer.from(openStore(root).bytes(page.blob)!).toString('utf8')) as NoteModel;
  held = model.heldNotes;
});

test.each([
  ['rated.device.rated_clock', 'content/devices/larch-2.md', /^rated_clock: 2\.0 GHz/],
  ['rated.device.throttle_at', 'content/devices/larch-2.md', /^ {2}soc: 84 °C/],
  ['rated.setting.clock', 'content/runs/larch-rated.md', /^ {2}clock: 2\.0 GHz/],
  ['rated.ambient', 'content/runs/larch-rated.md', /^ {2}ambient: /],
])('%s names the file and the line in which it is written', (expression, file, line) => {
  const [figure] = held.find((note) => note.expression === expression)!.figures;
  expect(figure!.file).toBe(file);
  const number = Number(/^line (\d+), stated, not measured$/.exec(figure!.from)![1]);
  expect(readFileSync(join(root, file), 'utf8').split('\n')[number - 1]).toMatch(line);
});
