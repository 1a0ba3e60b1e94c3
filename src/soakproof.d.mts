import type { AstroUserConfig } from 'astro';
import type { SiteOptions } from './compute/project/site-options.ts';

/** The configuration of a site, from the options of its author. */
export declare function publication(options: SiteOptions): AstroUserConfig;
