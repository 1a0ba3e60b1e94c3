// The front door for astro.config.mjs: `import { publication } from 'soakproof'`. Plain JavaScript, since a clone has TypeScript
// beside it and a package has what was compiled from that.
import { existsSync } from 'node:fs';

const inClone = existsSync(new URL('./print/publication.ts', import.meta.url));

/** The configuration of a site, from the options of its author. */
export const { publication } = await (inClone ? import('./print/publication.ts') : import('./print/publication.js'));
