/** Serves a folder on this machine as a static host would, under a base path. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.csv': 'text/csv; charset=utf-8',
  '.woff2': 'font/woff2',
};

export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

export async function serve(folder: string, base = '/'): Promise<Served> {
  const server: Server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const below = pathname.startsWith(base) ? join(folder, pathname.slice(base.length)) : join(folder, 'no-such-file');
    const file = existsSync(below) && statSync(below).isDirectory() ? join(below, 'index.html') : below;
    const found = existsSync(file);
    response.statusCode = found ? 200 : 404;
    response.setHeader('Content-Type', TYPES[extname(found ? file : '404.html')] ?? 'application/octet-stream');
    response.end(readFileSync(found ? file : join(folder, '404.html')));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${base}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
