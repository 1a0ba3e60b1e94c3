import { type ChildProcess, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { copySmall, copyUnbuilt, differences, type TestProject, tree } from './project.ts';

describe('npm run build', () => {
  let site: Map<string, Buffer>;

  beforeAll(() => {
    site = tree(join(inject('demonstration').root, 'dist'));
  });

  it('builds the demo without an error', () => {
    const { built } = inject('demonstration');
    expect(built.err).not.toContain(': error:');
    expect(built.code).toBe(0);
    expect([...site.keys()]).toEqual(expect.arrayContaining(['index.html', '404.html', 'method/index.html']));
  });

  it('gives the same bytes in another folder, zone and locale', () => {
    const other = copyUnbuilt('elsewhere');
    try {
      const ran = other.run('build', { TZ: 'Pacific/Auckland', LC_ALL: 'de_DE.UTF-8' });
      expect(ran.code).toBe(0);
      expect(differences(site, tree(join(other.root, 'dist')))).toEqual([]);
    } finally {
      other.remove();
    }
  });

  it('prints charts as SVG in the page and nothing inline that the policy would block', () => {
    const notes = [...site].filter(([path]) => /^notes\/[^/]+\/index\.html$/.test(path));
    expect(notes.length).toBeGreaterThan(0);
    expect(notes.some(([, html]) => html.includes('<svg'))).toBe(true);
    for (const [path, bytes] of site) {
      if (!path.endsWith('.html')) continue;
      const html = bytes.toString('utf8');
      expect(html, path).not.toMatch(/\sstyle="/);
      // Structured data is a data block: no browser runs it, and no policy asks after it.
      expect(html, path).not.toMatch(/<script(?![^>]*\ssrc=)(?! type="application\/ld\+json">)/);
      expect(html, path).not.toMatch(/<style/);
      expect(html, path).not.toMatch(/\son[a-z]+="/);
      expect(html, path).toContain('content-security-policy');
      expect(html, path).not.toContain('unsafe-inline');
    }
  });

  it('prints each number of a note exactly as its ledger has it', () => {
    const ledgers = [...site].filter(([path]) => /^notes\/[^/]+\/ledger\.json$/.test(path));
    expect(ledgers.length).toBeGreaterThan(0);
    for (const [path, bytes] of ledgers) {
      const { format, entries } = JSON.parse(bytes.toString('utf8')) as {
        format: number;
        entries: { kind: string; shown: string }[];
      };
      expect(format).toBe(1);
      const html = site.get(path.replace('ledger.json', 'index.html'))!.toString('utf8');
      const printed = [...html.matchAll(/<a class="held"[^>]*>([^<]*)<\/a>/g)].map((match) => match[1]);
      expect(printed).toEqual(entries.filter(({ kind }) => kind !== 'highlight').map(({ shown }) => shown));
      expect(printed.length).toBeGreaterThan(0);
    }
  });

  it('publishes figures whose u is the root sum of squares of their parts', () => {
    const files = [...site].filter(([path]) => /^runs\/[^/]+\/figures\.json$/.test(path));
    expect(files.length).toBeGreaterThan(3);
    for (const [path, bytes] of files) {
      const json = JSON.parse(bytes.toString('utf8')) as PublishedFigures;
      expect(Object.keys(json)[0], path).toBe('format');
      for (const [address, figure] of Object.entries(json.figures)) {
        if ('absent' in figure) {
          expect(figure.why, `${path} ${address}`).toMatch(/\.$/);
          continue;
        }
        expect(Number.isFinite(figure.value), `${path} ${address}`).toBe(true);
        const sources = Object.keys(figure.parts ?? {});
        expect(sources, `${path} ${address}`).toEqual([...sources].sort());
        for (const source of sources) expect(json.sources, `${path} ${address}`).toHaveProperty([source]);
        if (figure.u !== null) {
          const u = Math.sqrt(Object.values(figure.parts!).reduce((sum, part) => sum + part * part, 0));
          expect(figure.u, `${path} ${address}`).toBe(u);
        }
      }
    }
  });

  it('keeps drafts, held-back runs and unused columns out, byte by byte', () => {
    // The demo's draft and the run that only the draft reaches hold these words.
    const secrets = ['Moonwort', 'Quillwort', 'larch-preview', 'preview-soak'];
    const content = tree(join(inject('demonstration').root, 'content'));
    for (const secret of secrets)
      expect(`${content.get('notes/the-next-firmware.md')}${content.get('runs/larch-preview.md')}`).toContain(secret);
    for (const [path, bytes] of site) {
      for (const secret of secrets) expect(bytes.includes(secret), `${path} holds ${secret}`).toBe(false);
    }
  });
});

interface PublishedFigures {
  readonly format: number;
  readonly sources: Record<string, { title: string; dof: number | null }>;
  readonly figures: Record<
    string,
    { value: number; u: number | null; parts: Record<string, number> | null } | { absent: string; why: string }
  >;
}

describe('an incremental build', () => {
  let project: TestProject;
  beforeAll(() => {
    project = copySmall('incremental');
  });
  afterAll(() => project.remove());

  it('prints no page again when nothing changed', () => {
    // Where dist/ stands, Astro is not asked: here it is. In another folder than before it prints once more.
    const forgotten = () => rmSync(join(project.root, '.cache', 'standing.json'));
    expect(project.run('build').out).toContain('printed 0 of');
    forgotten();
    expect(project.run('build').code).toBe(0);
    forgotten();
    const again = project.run('build');
    expect(again.code).toBe(0);
    expect(again.out).toContain('printed 0 of');
    expect(differences(tree(join(inject('small'), 'dist')), tree(join(project.root, 'dist')))).toEqual([]);
  });

  it('changes what depends on a changed value, and nothing else', () => {
    const before = tree(join(project.root, 'dist'));
    changeOneReading(project);
    expect(project.run('build').code).toBe(0);
    const after = tree(join(project.root, 'dist'));
    const changed = differences(before, after);
    expect(changed).toContain('runs/larch-rated/figures.json');
    for (const path of changed)
      expect(path, 'only what the run feeds').toMatch(
        /^(runs\/larch-rated\/|comparisons\/larch-steps\/|record-copies\/larch-steps-[0-9a-f]+\/index\.html|notes\/|scripts\/|devices\/larch-2\/|verify\/|digests\.json|index\.html)/,
      );
  });

  it('equals a cold one after that change, another, a kill in mid-print, an undo, a third change and a build', async () => {
    const note = `content/notes/${noteNames(project)[0]}`;
    const original = project.read(note);
    const dist = tree(join(project.root, 'dist'));
    project.write(note, `${original}\n\nA sentence that is only there for a moment.\n`);
    const building = project.start('build');
    await untilPrinting(project.root, building);
    building.kill('SIGKILL');
    await new Promise((resolve) => building.once('exit', resolve));
    expect(differences(dist, tree(join(project.root, 'dist'))), 'the last good site stays').toEqual([]);
    project.write(note, original);
    // Another firmware stays: what conditions do to comparisons is made anew too.
    project.edit('content/runs/larch-second.md', 'conditions:\n', 'conditions:\n  firmware: 1.9\n');
    expect(project.run('build').code).toBe(0);
    expect(differences(tree(join(project.root, 'dist')), cold(project))).toEqual([]);
  });

  it('makes damaged cache entries anew', () => {
    const dist = tree(join(project.root, 'dist'));
    // Where the last manifest stands, no entry is read. Blobs are damaged in cache.test.ts, bit by bit.
    writeManifest(project, '{}');
    rmSync(join(project.root, '.cache', 'standing.json'));
    for (const folder of ['entries', 'astro/dist'])
      for (const name of tree(join(project.root, '.cache', folder)).keys())
        writeFileSync(join(project.root, '.cache', folder, name), 'damaged');
    expect(project.run('build').code).toBe(0);
    expect(differences(dist, tree(join(project.root, 'dist')))).toEqual([]);
  });

  it('takes a manifest of another format for none', () => {
    writeManifest(project, '{"format":0}');
    expect(project.run('check').code).toBe(0);
  });

  it('makes anew only the words of a note that changed, and leaves dist/ as it was when the disk takes no more', () => {
    const site = tree(join(project.root, 'dist'));
    const results = () => [...tree(join(project.root, '.cache', 'entries')).keys()];
    const before = new Set(results());
    project.edit('content/notes/a-second-larch.md', 'One specimen is an anecdote', 'One specimen is a story');
    expect(project.run('check').code).toBe(0);
    expect(results().filter((name) => !before.has(name)).length, 'its words, its archive, the declarations in it').toBe(3);
    // Stage 1 is done, so that it is the printing that fails: no file may grow beyond 250 kB, as on a full disk.
    const command = `ulimit -f 250; exec "${process.execPath}" src/commands/build.ts`;
    const ran = spawnSync('bash', ['-c', command], { cwd: project.root, encoding: 'utf8' });
    expect(ran.status).not.toBe(0);
    expect(existsSync(join(project.root, '.cache', 'building'))).toBe(true);
    expect(differences(site, tree(join(project.root, 'dist')))).toEqual([]);
    expect(project.run('build').code).toBe(0);
    expect(project.read('dist/notes/a-second-larch/index.html')).toContain('One specimen is a story');
  });

  it('keeps the good site where content/ is gone', () => {
    const dist = tree(join(project.root, 'dist'));
    renameSync(join(project.root, 'content'), join(project.root, 'elsewhere'));
    const ran = project.run('build');
    renameSync(join(project.root, 'elsewhere'), join(project.root, 'content'));
    expect(ran.code).toBe(1);
    expect(ran.err).toMatch(/^content:1:1: error: /m);
    expect(differences(dist, tree(join(project.root, 'dist')))).toEqual([]);
  });

  it('lets one of several builds at once through, and the others say why not', async () => {
    const builds = Array.from({ length: 3 }, () => project.start('build'));
    const codes = await Promise.all(builds.map((build) => new Promise<number | null>((resolve) => build.once('exit', resolve))));
    expect(codes.toSorted()).toEqual([0, 1, 1]);
    expect(project.run('build').out).toContain('printed 0 of');
  });
});

describe('a build with errors', () => {
  it('locates every one of them in one go and leaves dist/ as it was', () => {
    const project = copySmall('errors');
    try {
      const before = tree(join(project.root, 'dist'));
      breakEverything(project);
      const ran = project.run('build');
      expect(ran.code).toBe(1);
      for (const expected of BREAKAGES) expect(ran.err).toMatch(expected);
      for (const line of ran.err.split('\n').filter((text) => text.includes(': error:')))
        expect(line).toMatch(/^[^:]+:\d+:\d+: error: /);
      expect(differences(before, tree(join(project.root, 'dist')))).toEqual([]);
    } finally {
      project.remove();
    }
  });

  it('also where nothing was published before', () => {
    const project = copyUnbuilt('empty');
    try {
      rmSync(join(project.root, 'content'), { recursive: true });
      mkdirSync(join(project.root, 'content', 'runs'), { recursive: true });
      project.write('content/runs/lonely.md', '---\ntitle: [\n---\n');
      expect(project.run('build').code).toBe(1);
      expect(existsSync(join(project.root, 'dist'))).toBe(false);
    } finally {
      project.remove();
    }
  });
});

/** A line for each thing that `breakEverything` breaks. */
const BREAKAGES = [
  /^content\/runs\/no-column\.md:\d+:\d+: error: /m,
  /^content\/runs\/no-unit\.md:\d+:\d+: error: /m,
  /^content\/runs\/no-device\.md:\d+:\d+: error: /m,
  /^content\/runs\/no-yaml\.md:\d+:\d+: error: /m,
  /^content\/runs\/outside\.md:\d+:\d+: error: /m,
  /^content\/runs\/through-link\.md:\d+:\d+: error: /m,
  /^content\/runs\/no-log\.md:\d+:\d+: error: /m,
  /^content\/runs\/no-key\.md:\d+:\d+: error: /m,
  /^data\/ragged\.csv:4:\d+: (error|warning): /m,
];

function breakEverything(project: TestProject): void {
  const run = (name: string, lines: readonly string[]) =>
    project.write(
      `content/runs/${name}.md`,
      ['---', `title: ${name}`, 'specimen: no-1', 'date: 2026-03-14', ...lines, '---', ''].join('\n'),
    );
  const log = (file: string) => [
    'device: larch-2',
    `log: ${file}`,
    'channels:',
    '  soc:',
    '    quantity: temperature',
    '    column: "temp (°C)"',
  ];
  project.write('data/ragged.csv', 'time (s),temp (°C)\n0,40\n1,41\n2,42,7\n3,43\n4,44\n');
  project.write('data/whole.csv', 'time (s),temp (°C),amps\n0,40,1\n1,41,1\n2,42,1\n3,43,1\n');
  writeFileSync(join(project.root, 'outside.csv'), 'time (s),temp (°C)\n0,40\n1,41\n');
  symlinkSync(join(project.root, 'outside.csv'), join(project.root, 'data', 'link.csv'));
  run('ragged', log('ragged.csv'));
  run('no-column', [...log('whole.csv'), '  board:', '    quantity: temperature', '    column: bord']);
  run('no-unit', [...log('whole.csv'), '  board:', '    quantity: current', '    column: amps', '    unit: furlong']);
  run(
    'no-device',
    log('whole.csv').map((line) => line.replace('larch-2', 'larsh-2')),
  );
  run('outside', log('../outside.csv'));
  run('through-link', log('link.csv'));
  run('no-log', ['device: larch-2']);
  run('no-key', [...log('whole.csv'), 'colour: red']);
  project.write('content/runs/no-yaml.md', '---\ntitle: "no end\n---\n');
}

/** A manifest that is as it was written, whatever it says. */
function writeManifest(project: TestProject, payload: string): void {
  project.write('.cache/manifest-site.json', `${createHash('sha256').update(payload).digest('hex')}\n${payload}`);
}

function noteNames(project: TestProject): string[] {
  return [...tree(join(project.root, 'content', 'notes')).keys()].filter((name) =>
    project.read(`content/notes/${name}`).includes('status: published'),
  );
}

/** Changes the digits of one reading in the load phase of the rated run. */
function changeOneReading(project: TestProject): void {
  const path = 'data/larch-2/rated-soak.csv';
  const lines = project.read(path).split('\n');
  const index = Math.floor(lines.length / 2);
  lines[index] = lines[index]!.replace(/(\d)(\D*)$/, (_all, digit: string, rest: string) => `${(Number(digit) + 5) % 10}${rest}`);
  project.write(path, lines.join('\n'));
}

/** The site that a build without any result of an earlier one gives from the project as it now is. Only compiled code is kept. */
function cold(project: TestProject): Map<string, Buffer> {
  const before = tree(join(project.root, 'dist'));
  for (const name of readdirSync(join(project.root, '.cache')))
    if (name !== 'compiled') rmSync(join(project.root, '.cache', name), { recursive: true });
  rmSync(join(project.root, 'dist'), { recursive: true });
  expect(project.run('build').code).toBe(0);
  const made = tree(join(project.root, 'dist'));
  expect(made.size).toBe(before.size);
  return made;
}

/** Waits until Astro has printed its first pages into the side folder. */
async function untilPrinting(root: string, building: ChildProcess): Promise<void> {
  while (building.exitCode === null && building.signalCode === null) {
    if (existsSync(join(root, '.cache', 'site-next', 'index.html')) || existsSync(join(root, '.cache', 'site-next', 'runs')))
      return;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error('the build never printed a page');
}
