/** What astro.config.mjs exports: the whole configuration of a publication's site, from a few plain options. */
import type { AstroUserConfig } from 'astro';
import type { SiteOptions } from '../compute/project/site-facts.ts';
import { soakproof } from './integration.ts';

export interface PublicationOptions extends SiteOptions {
  /** The address that readers use: `https://bench.example`. */
  readonly site?: string;
  /** The folder that it stands in: `/`, or `/reports/`. */
  readonly base?: string;
}

/** Astro's configuration for a publication. Nothing in it is decided twice: see `integration.ts`. */
export function publication({ site, base = '/', ...options }: PublicationOptions): AstroUserConfig {
  return { ...(site === undefined ? {} : { site }), base, integrations: [soakproof(options)] };
}
