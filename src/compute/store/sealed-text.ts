/** A text of the cache behind its own digest: read back as it was written, or not at all. */
import { readFileSync } from 'node:fs';
import { digest } from './digest.ts';
import { writeWhole } from './store.ts';

/** Writes a text, whole or not at all. */
export function writeSealed(path: string, text: string): void {
  writeWhole(path, `${digest(text)}\n${text}`);
}

/** The text; undefined where there is none, or it is not as it was written. */
export function readSealed(path: string): string | undefined {
  const content = contentOf(path);
  const end = content.indexOf('\n');
  const text = content.slice(end + 1);
  return end > 0 && content.slice(0, end) === digest(text) ? text : undefined;
}

function contentOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}
