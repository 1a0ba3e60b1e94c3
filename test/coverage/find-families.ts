/** The families of coverage: each file of the folder `families` is one, under the name of the file. */
import { readdirSync } from 'node:fs';
import type { Family } from './family.ts';

const FOLDER = new URL('./families/', import.meta.url);

/** Names in alphabetical order. */
export function familyNames(): readonly string[] {
  const files = readdirSync(FOLDER).filter((file) => file.endsWith('.ts'));
  return files.map((file) => file.slice(0, -'.ts'.length)).sort();
}

/** A family by its name; an error for one that there is not. */
export async function familyOf(name: string): Promise<Family> {
  const { FAMILY } = (await import(new URL(`${name}.ts`, FOLDER).href)) as { readonly FAMILY?: Family };
  if (!FAMILY) throw new Error(`test/coverage/families/${name}.ts exports no FAMILY`);
  return FAMILY;
}
