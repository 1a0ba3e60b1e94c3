/** What astro.config.mjs exports: the whole configuration of a publication's site, from a few plain options. */
import type { AstroUserConfig } from 'astro';
import type { SiteOptions } from '../compute/project/site-options.ts';
import { soakproof } from './integration.ts';

/** Astro's configuration for a publication. Nothing in it is decided twice: see `integration.ts`. */
export function publication(options: SiteOptions): AstroUserConfig {
  const { site, base = '/' } = options;
  return { ...(site === undefined ? {} : { site }), base, integrations: [soakproof(options)] };
}
