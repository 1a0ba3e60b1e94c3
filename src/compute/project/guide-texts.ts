/** The user's guide as it lies beside the code, in Markdown. */
import { readdirSync, readFileSync } from 'node:fs';
import { compareText } from '../../problem.ts';

const GUIDE = new URL('../../guide/', import.meta.url);

/** Pages by the names of their files, sorted. */
export function guideTexts(): ReadonlyMap<string, string> {
  const names = readdirSync(GUIDE).filter((name) => name.endsWith('.md'));
  return new Map(names.sort(compareText).map((name) => [name, readFileSync(new URL(name, GUIDE), 'utf8')]));
}
