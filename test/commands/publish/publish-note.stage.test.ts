import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { publishNote } from '../../../src/commands/publish/publish-note.ts';
import { compute } from '../../../src/compute/compute.ts';
import { copyBuilt } from '../../site/project.ts';
import { demoProject } from '../hold/demo.ts';

const FILE = 'content/notes/plain.md';
const STATE = 'content/published/notes-plain.json';

/** A draft whose text has that link. */
function draft(href: string): string {
  return `---\ntitle: Plain words\ndate: 2026-04-01\nstatus: draft\nruns:\n  fast: larch-fast\n---\n\nIt peaks at :value[fast.peak_temperature]; see [there](${href}).\n`;
}

let project: ReturnType<typeof demoProject>;
beforeAll(() => {
  project = demoProject();
  copyBuilt(project.root, ['.cache']);
});
afterAll(() => project.remove());

/** Runs the command on a note with that text. */
async function publish(text: string) {
  const path = join(project.root, FILE);
  writeFileSync(path, text);
  let out = '';
  let err = '';
  const code = await publishNote(project.root, [FILE], { out: (more) => (out += more), err: (more) => (err += more) });
  return { code, out, err, text: readFileSync(path, 'utf8') };
}

async function deadIn(): Promise<string[]> {
  const { problems } = await compute(project.root, 'site');
  return problems.filter(({ rule }) => rule === 'dead-link').map(({ severity, place }) => `${severity} ${place.line}`);
}

describe('commands/publish/publish-note', () => {
  test('a draft with a dead link is refused as check would refuse it published, and nothing is written', async () => {
    const text = draft('../nothing/');
    const refused = await publish(text);
    expect(refused).toMatchObject({ code: 1, text });
    expect(refused.err).toContain(`${FILE}:9:`);
    expect(refused.err).toContain('error: a link to `../nothing/`, which is not a page of the site [dead-link]');
    expect(existsSync(join(project.root, STATE))).toBe(false);
    expect(await deadIn()).toEqual(['warning 9']);
  });

  test('a link to a page that the publication itself brings is none, and check then has nothing against it', async () => {
    const { code, text, out, err } = await publish(draft('../../runs/larch-fast/'));
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toContain(': 1 number, 0 plots held in ');
    expect(text).toContain('status: published');
    const { problems } = await compute(project.root, 'site');
    expect(problems.filter(({ severity, place }) => severity === 'error' || place.file === FILE)).toEqual([]);
  });
});
