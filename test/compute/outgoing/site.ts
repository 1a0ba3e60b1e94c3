import type { SiteFile } from '../../../src/compute/outgoing/site-files.ts';

/** A site of a few texts, by path. */
export function siteOf(texts: Readonly<Record<string, string | Uint8Array>>): SiteFile[] {
  return Object.entries(texts).map(([path, text]) => ({ path, bytes: typeof text === 'string' ? Buffer.from(text) : text }));
}
