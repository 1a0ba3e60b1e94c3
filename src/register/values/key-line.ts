/** A key as an author may write it, for the reference and for files to fill in. */
import { exampleOf } from './examples.ts';
import type { KeyFacts } from './shape.ts';

/** The line: the key's own example, else the one that messages show; undefined where there is none. */
export function lineOf({ key, kinds, takes }: KeyFacts): string | undefined {
  if (takes.example !== undefined) return isEntry(takes.example) ? `${key}:\n  ${takes.example}` : `${key}: ${takes.example}`;
  if (!kinds.includes('text')) return undefined;
  const told = exampleOf(key);
  if (told?.startsWith(`${key}: `)) return told;
  const [value] = takes.words ?? (takes.quantity ? [takes.quantity.example] : []);
  return value === undefined ? undefined : `${key}: ${value}`;
}

/** Whether an example is a line below its key: a name and what stands behind it. */
const isEntry = (example: string) => /^[^[\n]+:[ \n]/.test(example);
