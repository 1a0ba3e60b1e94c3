import type { Server } from 'node:http';
import { SCOPE_VARIABLE } from '../compute/results.ts';
import { refuseMalformed } from './malformed.ts';

/** Astro's servers: dev for the author at work, preview for a look at dist/. */
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

/** Serves dist/ as a static host would. */
export async function servePreview(root: string, options: ServeOptions): Promise<void> {
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  const { preview } = await import('astro');
  const { server } = (await preview({ root, server: options })) as unknown as { readonly server: Server };
  refuseMalformed(server);
}
