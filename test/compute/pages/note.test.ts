/** Over the demo: where a stated fact of a note is said to stand. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { compute } from '../../../src/compute/compute.ts';
import type { HeldNote, NoteModel } from '../../../src/compute/results.ts';
import { openStore } from '../../../src/compute/store/store.ts';

const HERE = fileURLToPath(new URL('../../..', import.meta.url));
let root: string;
let held: readonly HeldNote[];

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-held-'));
  for (const folder of ['content', 'data']) cpSync(join(HERE, folder), join(root, folder), { recursive: true });
  const manifest = await compute(root, 'site');
  const page = manifest.pages.find(({ path }) => path === 'notes/a-clock-it-cannot-keep/')!;
  const model = JSON.parse(Buffer.from(openStore(root).bytes(page.blob)!).toString('utf8')) as NoteModel;
  held = model.heldNotes;
}, 60_000);
afterAll(() => rmSync(root, { recursive: true, force: true }));

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
