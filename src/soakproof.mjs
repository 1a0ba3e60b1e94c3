// The front door for astro.config.mjs: `import { publication } from 'soakproof'`. Plain JavaScript, since a clone has TypeScript
// beside it and a package has what was compiled from that.
import { existsSync } from 'node:fs';

const source = new URL('./print/publication.ts', import.meta.url);
const compiled = new URL('./print/publication.js', import.meta.url);

/** The configuration of a site, from the options of its author. */
export const { publication } = await import((existsSync(source) ? source : compiled).href);
