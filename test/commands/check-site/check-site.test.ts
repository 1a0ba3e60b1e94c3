import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import { type Answer, hostFaults, isAddress } from '../../../src/commands/check-site/at-host.ts';
import { checkSite } from '../../../src/commands/check-site/check-site.ts';
import { ownNames } from '../../../src/commands/check-site/own-names.ts';
import { HEADERS, headersJson, headersOf } from '../../../src/compute/outgoing/headers.ts';
import { siteOf } from '../../compute/outgoing/site.ts';

const SITE = {
  'index.html': '<a href="/notes/a/">',
  'notes/a/index.html': '<p id="x">',
  '404.html': '<p>404',
  'a.csv': 't',
  'headers.json': headersJson('/'),
};

function project(name: string, files: Readonly<Record<string, string>>): string {
  const root = join(inject('scratch'), `check-site-${name}`);
  const config =
    "export default { integrations: [{ named: { title: 'T', contact: 'me@bench.example', harmless: ['10.0.0.8'] } }] };";
  const all = {
    'astro.config.mjs': config,
    'content/a.md': '',
    ...Object.fromEntries(Object.entries(files).map(([path, text]) => [`dist/${path}`, text])),
  };
  for (const [path, text] of Object.entries(all)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  return root;
}

async function check(root: string, since?: string) {
  const printed = { out: '', err: '' };
  const write = (where: 'out' | 'err') => (text: string) => {
    printed[where] += text;
  };
  const code = await checkSite(
    { root, names: ['rowan'], ...(since === undefined ? {} : { since }) },
    { out: write('out'), err: write('err') },
  );
  return { code, ...printed };
}

describe('check-site', () => {
  it('lets a site through, and says the next time what changed since', async () => {
    const root = project('clean', { ...SITE, 'a.txt': 'me@bench.example and 10.0.0.8' });
    const first = await check(root);
    expect(first).toMatchObject({ code: 0, err: '' });
    expect(first.out).toContain('No link is broken, and nothing looks private.\n3 pages and 3 other files, 0.0 MB.');
    expect(first.out).toContain('There is no earlier site to compare with: --since names a folder that has one.\n');
    expect((await check(root)).out).toContain('Nothing changed since the last site that this check let through.\n');
    writeFileSync(join(root, 'dist/a.csv'), 'other');
    writeFileSync(join(root, 'dist/b.csv'), '');
    expect((await check(root)).out).toContain('Since the last site that this check let through:\n  new: b.csv\n  changed: a.csv\n');
    expect((await check(root, project('earlier', { 'c.csv': '' }))).out).toContain('check-site-earlier:\n');
  });

  it('stops what must not go out, and forgets no earlier site over it', async () => {
    const root = project('leaking', { ...SITE, 'a.csv': 'x\n/home/rowan/a', 'index.html': '<a href="/none/">' });
    const { code, err, out } = await check(root);
    expect(code).toBe(1);
    expect(err).toContain('dist/a.csv:2:1: error: this file says a path of a machine, `/home/rowan` [site-leak]');
    expect(err).toContain('dist/a.csv:2:7: error: this file says a name of this machine or of its user, `rowan` [site-leak]');
    expect(err).toContain('dist/index.html:1:4: error: `/none/` leads nowhere [site-link]');
    expect(out).not.toContain('nothing looks private');
    expect((await check(root)).out).toContain('There is no earlier site');
  });

  it('begins anew where what it remembers is damaged', async () => {
    const root = project('damaged', SITE);
    mkdirSync(join(root, '.cache'));
    writeFileSync(join(root, '.cache/site-checked.json'), '{"index.ht');
    expect(await check(root)).toMatchObject({ code: 0, out: expect.stringContaining('There is no earlier site') });
  });

  it('knows the machine alone where its user has no name', () => {
    const nobody = () => {
      throw new Error('ENOENT');
    };
    expect(ownNames(nobody)).toEqual([expect.any(String)]);
    expect(ownNames(() => ({ username: 'rowan' }))).toEqual([expect.any(String), 'rowan']);
  });

  it('needs a site', async () => {
    expect(await check(project('none', {}))).toEqual({
      code: 1,
      out: '',
      err: 'There is no site in dist/ yet: `npm run build` makes it.\n',
    });
  });
});

/** A host that shows `SITE` as it should, but for what a test changes. */
function host(change: (path: string, answer: { status: number; headers: Record<string, string>; body: string }) => void) {
  return async (address: string): Promise<Answer> => {
    const asked = address.slice('https://bench.example/'.length).replace(/(?:^|(?<=\/))$/, 'index.html');
    const body = SITE[asked as keyof typeof SITE];
    const answer = {
      status: body === undefined ? 404 : 200,
      headers: { ...headersOf(asked, HEADERS) },
      body: body ?? SITE['404.html'],
    };
    change(asked, answer);
    return { status: answer.status, headers: new Headers(answer.headers), bytes: Buffer.from(answer.body) };
  };
}
const faults = async (change: Parameters<typeof host>[0]) =>
  (await hostFaults(siteOf(SITE), 'https://bench.example/', host(change))).map(
    ({ severity, rule, found }) => `${severity} ${rule}: ${found}`,
  );

describe('check-site --at', () => {
  it('finds nothing wrong with a host that does as headers.json says', async () => {
    expect(await faults(() => {})).toEqual([]);
    // As programs write them: other case, other blanks, one policy of several.
    expect(
      await faults((_path, { headers }) => {
        headers['Content-Type'] = headers['Content-Type']!.toUpperCase().replace('; ', ';');
        headers['Content-Security-Policy'] = `upgrade-insecure-requests, ${headers['Content-Security-Policy']}`;
      }),
    ).toEqual([]);
  });

  it('asks for names with any sign in them', async () => {
    const asked: string[] = [];
    await hostFaults(siteOf({ 'data/50 %#?.csv': 't' }), 'https://bench.example/', async (address) => {
      asked.push(address);
      return { status: 404, headers: new Headers(), bytes: Buffer.from('') };
    });
    expect(asked[0]).toBe('https://bench.example/data/50%20%25%23%3F.csv');
  });

  it.each([
    ['https://bench.example/reports/', true],
    ['https://[', false],
    ['https://bench.example/?a', false],
    ['bench.example', false],
  ])('takes %s for an address: %s', (text, is) => {
    expect(isAddress(text)).toBe(is);
  });

  it('tells a host that knows no index of a folder', async () => {
    const noIndex: Parameters<typeof host>[0] = (path, answer) => {
      if (path.endsWith('/index.html')) Object.assign(answer, { status: 404, body: 'no such key' });
    };
    expect(await faults(noIndex)).toEqual([
      'error host-folder: the host shows something else at https://bench.example/notes/a/ (status 404)',
    ]);
  });

  it('tells missing and other headers, once each', async () => {
    expect(
      await faults((path, { headers }) => {
        delete headers['Content-Security-Policy'];
        if (path === 'a.csv') headers['Content-Type'] = 'text/plain';
      }),
    ).toEqual([
      'warning host-header: the host sends no Content-Security-Policy with index.html, nor with 3 more of the files that were asked for',
      'warning host-header: the host sends Content-Type: text/plain with a.csv',
    ]);
  });

  it('tells files that are missing or other ones, and a missing address that is shown as a page', async () => {
    expect(
      await faults((path, answer) => {
        if (path === 'a.csv') answer.body = 'other';
        if (path === 'headers.json') answer.status = 403;
        if (path.startsWith('no-such')) answer.status = 200;
      }),
    ).toEqual([
      'error host-file: other bytes are at https://bench.example/a.csv',
      'error host-file: the host answers 403 at https://bench.example/headers.json',
      'warning host-missing: the host answers 200 at an address that the site does not have',
    ]);
  });
});
