import { createServer } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import { describe, expect, it } from 'vitest';
import { isMalformed, refuseMalformed } from '../../src/print/malformed.ts';

describe('print/malformed', () => {
  it.each([
    '/%',
    '/%E0%A4%A',
    '/%C0%AE%C0%AE/',
    '/?q=%zz',
    '/%00',
    '/a%0db/',
    '/../etc/passwd',
    '/..%2f..%2fpackage.json',
    '/%2e%2E/a',
    '/a/./b',
    '/..',
    '/a\\..\\b',
    '/%5c..%5cb',
    'http://other.example/',
    '*',
    '',
    `/${'a'.repeat(4096)}`,
  ])('takes %j for malformed', (target) => expect(isMalformed(target)).toBe(true));

  it.each([
    '/',
    '/notes/a-second-larch/',
    '/runs/?clock=2.6%20GHz&q=..%2F..',
    '/a..b/...',
    '/%C2%B0C/',
    '/assets/a.css?v=1#x',
    '/@id/__x00__astro',
    `/${'a'.repeat(4095)}`,
  ])('and not %j', (target) => expect(isMalformed(target)).toBe(false));

  it('answers with 400 and one sentence, and hands every other request on', async () => {
    const server = createServer((request, response) => response.end(`page ${request.url}`));
    refuseMalformed(server);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as AddressInfo;
    // A client of the library would mend some of these before it sends them.
    const ask = (target: string) =>
      new Promise<string>((resolve) => {
        let answer = '';
        const socket = connect(port, '127.0.0.1', () =>
          socket.write(`GET ${target} HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n`),
        );
        socket.on('data', (chunk) => {
          answer += chunk;
        });
        socket.on('close', () => resolve(answer));
      });
    expect(await ask('/a/')).toMatch(/^HTTP\/1\.1 200 [\s\S]*page \/a\//);
    for (const target of ['/%', '/..%2f..%2fpackage.json', '/%C0%AE%C0%AE/'])
      expect(await ask(target)).toMatch(/^HTTP\/1\.1 400 [\s\S]*400: this address is malformed\.\n/);
    await new Promise((resolve) => server.close(resolve));
  });
});
