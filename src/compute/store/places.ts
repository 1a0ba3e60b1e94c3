/**
 * Two folders that must not be taken for one another: the tool's own, and the publication that it works on. In a clone they are one folder;
 * where the tool is a package they lie apart. Nothing else in `src` asks where either is.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the tool's code, with a slash at its end: `src` of a clone, the compiled code of a package. */
export function codeFolder(): string {
  return fileURLToPath(new URL('../..', import.meta.url));
}

/** The folder that holds the tool's package.json. */
export function toolFolder(): string {
  return join(codeFolder(), '..');
}

/** The tool's version, as its package.json has it. */
export function toolVersion(): string {
  return (JSON.parse(readFileSync(join(toolFolder(), 'package.json'), 'utf8')) as { readonly version: string }).version;
}

/** The folder of the publication: content/, data/ and astro.config.mjs. Commands and Astro run with it as their working folder. */
export function publicationFolder(): string {
  return process.cwd();
}
