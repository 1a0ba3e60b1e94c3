/** The servers: Astro's for the author at work, our own for a look at dist/ as a host would show it. */
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { HEADERS_FILE, type HeadersFile } from '../compute/outgoing/headers.ts';
import { SCOPE_VARIABLE } from '../compute/results.ts';
import { Refusal } from './failure.ts';
import { staticServer } from './static-server.ts';

export interface ServeOptions {
  readonly port?: number;
  readonly host?: string;
}

/** Starts the dev server of a project folder. The integration runs stage 1 in it. */
export async function serveDev(root: string, options: ServeOptions): Promise<void> {
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  process.env[SCOPE_VARIABLE] = 'all';
  const { dev } = await import('astro');
  await dev({ root, server: options });
}

/** Where servers listen unless their author says otherwise. */
const PORT = 4321;
/** Ports that are tried where one is taken and none was asked for. */
const TRIES = 20;

/** Serves dist/ as a static host would, with the headers that the site asks for. Gives its address. */
export async function servePreview(root: string, { port, host = 'localhost' }: ServeOptions): Promise<string> {
  const folder = join(root, 'dist');
  const server = staticServer(folder);
  const last = port === undefined ? PORT + TRIES : port;
  for (let at = port ?? PORT; ; at++) {
    try {
      server.listen(at, host);
      await once(server, 'listening');
      const { port: taken } = server.address() as AddressInfo;
      const { base } = JSON.parse(readFileSync(join(folder, HEADERS_FILE), 'utf8')) as HeadersFile;
      return `http://${host.includes(':') ? `[${host}]` : host}:${taken}${base}`;
    } catch (thrown) {
      if ((thrown as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw thrown;
      if (at >= last) throw new Refusal(`port ${at} is taken by another program: name another with --port`);
    }
  }
}
