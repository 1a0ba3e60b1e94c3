import { once } from 'node:events';
import { mkdirSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { headersJson } from '../../src/compute/outgoing/headers.ts';
import { staticServer } from '../../src/print/static-server.ts';

let server: Server;
let address: string;

beforeAll(async () => {
  const folder = join(inject('scratch'), 'static-server');
  mkdirSync(join(folder, 'notes/a b'), { recursive: true });
  mkdirSync(join(folder, 'plain'));
  const files = {
    'index.html': 'home',
    '404.html': 'missing',
    'notes/a b/index.html': 'note',
    'a.csv': 't\n',
    'headers.json': headersJson('/r/'),
  };
  for (const [path, text] of Object.entries(files)) writeFileSync(join(folder, path), text);
  server = staticServer(folder);
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(() => server.close());

async function get(path: string, method = 'GET') {
  const response = await fetch(address + path, { redirect: 'manual', method });
  const { status, headers } = response;
  return { status, text: await response.text(), to: headers.get('location'), type: headers.get('content-type'), headers };
}

describe('print/static-server', () => {
  it('shows the index of a folder below the base, and sends the headers of the site', async () => {
    const { headers, ...home } = await get('/r/');
    expect(home).toEqual({ status: 200, text: 'home', to: null, type: 'text/html; charset=utf-8' });
    expect(headers.get('content-security-policy')).toBe("frame-ancestors 'none'");
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(await get('/r/notes/a%20b/?x=1')).toMatchObject({ status: 200, text: 'note' });
    expect(await get('/r/a.csv')).toMatchObject({ status: 200, text: 't\n', type: 'text/csv; charset=utf-8' });
    expect(await get('/r/a.csv', 'HEAD')).toMatchObject({ status: 200, text: '' });
  });

  it('leads to the address with a slash', async () => {
    expect(await get('/r')).toMatchObject({ status: 301, to: '/r/' });
    expect(await get('/r/notes/a%20b?x=1')).toMatchObject({ status: 301, to: '/r/notes/a%20b/?x=1' });
  });

  it('shows 404.html where there is nothing, never the list of a folder, and nothing outside of the base', async () => {
    for (const path of ['/r/none', '/r/plain/', '/r/plain', '/r/a.csv/'])
      expect(await get(path), path).toMatchObject({ status: 404, text: 'missing' });
    expect(await get('/')).toMatchObject({ status: 404, text: '404: there is nothing at this address.\n' });
  });

  it('refuses what no page can have, and everything but reading', async () => {
    expect((await get('/r/%c3%28')).status).toBe(400);
    expect((await get('/r/', 'POST')).status).toBe(405);
  });
});
