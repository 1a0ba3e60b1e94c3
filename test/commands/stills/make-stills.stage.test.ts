import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeStills } from '../../../src/commands/stills/make-stills.ts';
import { copyBuilt } from '../../site/project.ts';
import { demoProject } from '../hold/demo.ts';

const SCRIPT = 'content/scripts/short.md';

let project: ReturnType<typeof demoProject>;
beforeAll(() => {
  project = demoProject();
  copyBuilt(project.root, ['.cache']);
  const runs = join(project.root, 'content', 'runs');
  const others = readdirSync(runs).filter((name) => !/^larch-(rated|brisk|quick|fast)\.md$/.test(name));
  for (const name of others) rmSync(join(runs, name));
  rmSync(join(project.root, 'content', 'attempts'), { recursive: true });
  rmSync(join(project.root, 'content', 'comparisons'), { recursive: true });
  mkdirSync(join(project.root, 'content', 'scripts'));
});
afterAll(() => project.remove());

function script(body: string): void {
  const head = 'title: Short\ndate: 2026-04-01\nstatus: draft\nruns:\n  rated: larch-rated\n  fast: larch-fast';
  writeFileSync(join(project.root, SCRIPT), `---\n${head}\n---\n\n${body}\n`);
}

async function stills(...args: string[]) {
  let out = '';
  let err = '';
  const code = await makeStills(project.root, args, { out: (more) => (out += more), err: (more) => (err += more) });
  return { code, out, err };
}

/** Every file of the script's pictures with its bytes. */
function files(): Map<string, Buffer> {
  const folder = join(project.root, 'stills', 'short');
  const names = readdirSync(folder, { recursive: true }) as string[];
  const plain = names.filter((name) => statSync(join(folder, name)).isFile()).sort();
  return new Map(plain.map((name) => [name, readFileSync(join(folder, name))]));
}

const beside = () => readdirSync(join(project.root, '.cache')).filter((name) => name.startsWith('stills'));

const NUMBER = ':value[fast.load_power - rated.load_power]{unit=W}';

describe('commands/stills/make-stills', () => {
  test('a draft’s cues become pictures in all looks and sizes, named by cue and time', async () => {
    script(
      `Hello.\n\n:::cue{at="0:05"}\nA caption: *hot enough to burn*.\n:::\n\nMore.\n\n:::cue{at="1:05"}\nMore power: ${NUMBER}.\n:::`,
    );
    const { code, out } = await stills(SCRIPT);
    expect(out).toContain(
      'stills/short/ has 2 pictures as SVG, 1920x1080 and 3840x2160: light, dark and transparent.\n18 of 18 files',
    );
    expect(code).toBe(0);
    const made = files();
    const names = ['01-0m05s-words', '02-1m05s-fast.load_power-rated.load_power'];
    const looks = ['dark', 'light', 'transparent'];
    const expected = [
      ...['1920x1080', '3840x2160'].flatMap((size) => looks.flatMap((look) => names.map((name) => `${size}/${look}/${name}.png`))),
      ...looks.flatMap((look) => names.map((name) => `svg/${look}/${name}.svg`)),
    ];
    const beneath = [...made.keys()].filter((name) => !name.includes('/'));
    expect(beneath).toEqual(['drawn-from.json', 'script.srt', 'script.vtt', 'video.txt']);
    expect(out).toContain('Beside them: video.txt, script.srt and script.vtt.');
    expect([...made.keys()].filter((name) => !beneath.includes(name)).sort()).toEqual(expected.sort());
    for (const [name, bytes] of made) {
      if (!name.endsWith('.png')) continue;
      // IHDR (ISO/IEC 15948): width and height as its name says.
      expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(name.split('/')[0]);
    }
    expect(beside()).toEqual([]);
  });

  test('the same again are the same bytes, and nothing is drawn anew; drawn anew they are the same, too', async () => {
    const before = files();
    expect((await stills(SCRIPT)).out).toContain('0 of 18 files');
    expect(files()).toEqual(before);
    rmSync(join(project.root, 'stills', 'short', 'drawn-from.json'));
    expect((await stills(SCRIPT, '--width', '1920', '--look', 'dark')).out).toContain('4 of 4 files');
    for (const [name, bytes] of files()) if (name !== 'drawn-from.json') expect(bytes, name).toEqual(before.get(name));
  });

  test('one look without PNG leaves the others, other sizes and an author’s own files as they were', async () => {
    writeFileSync(join(project.root, 'stills', 'short', 'my-cut.txt'), 'at 0:12 the lid');
    const before = files();
    expect((await stills(SCRIPT, '--look', 'light', '--width', '0')).out).toContain('2 of 2 files');
    const after = files();
    for (const all of [before, after]) all.delete('drawn-from.json');
    expect(after).toEqual(before);
    rmSync(join(project.root, 'stills', 'short', 'my-cut.txt'));
    await stills(SCRIPT);
  });

  test('a file that somebody changed is drawn anew', async () => {
    const path = '1920x1080/dark/01-0m05s-words.png';
    const whole = files().get(path);
    writeFileSync(join(project.root, 'stills', 'short', path), 'torn');
    expect((await stills('short', '--width', '1920', '--look', 'dark')).out).toContain('1 of 4 files was drawn anew');
    expect(files().get(path)).toEqual(whole);
  });

  test('only what changed is drawn; a look and a size that there is none of are refused', async () => {
    script(`:::cue{at="0:05"}\nA caption: *hot enough to burn*.\n:::\n\n:::cue{at="1:05"}\nMore power: ${NUMBER}. *Mind it*.\n:::`);
    expect((await stills(SCRIPT, '--look', 'dark', '--width=1920')).out).toContain('as SVG and 1920x1080: dark.\n0 of 4 files');
    expect(await stills(SCRIPT, '--look', 'green')).toMatchObject({
      code: 2,
      err: expect.stringContaining('light, dark, transparent'),
    });
    expect(await stills(SCRIPT, '--width', '7')).toMatchObject({ code: 2, err: expect.stringContaining('1920, 3840, 0') });
  });

  test('an error is told with its place, and the pictures stay as they were', async () => {
    const before = files();
    script(':::cue{at="0:05"}\nThe peak: :value[fast.peak_temprature].\n:::');
    const { code, err } = await stills(SCRIPT);
    expect(code).toBe(1);
    expect(err).toContain(`${SCRIPT}:11:`);
    expect(err).toContain(`No picture of ${SCRIPT} is drawn: mend the errors first`);
    expect(files()).toEqual(before);
  });

  test('a script that there is none of', async () => {
    expect(await stills('shorter')).toMatchObject({
      code: 1,
      out: '',
      err: expect.stringMatching(/^there is no script shorter.*short/),
    });
  });
});
