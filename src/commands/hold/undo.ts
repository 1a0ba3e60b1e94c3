/** Takes back what `hold` wrote last into a note: the file as it was, or where it was edited since, each directive by the words it replaced. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { writeWhole } from '../../compute/store/store.ts';

/** What one run of `hold` did to a file. */
interface Step {
  readonly before: string;
  /** Digest of the text that it wrote. */
  readonly after: string;
  readonly replaced: readonly Replaced[];
}

export interface Replaced {
  readonly was: string;
  readonly written: string;
}

/** Older steps are forgotten. */
const KEPT = 20;

function pathOf(root: string, file: string): string {
  return join(root, '.cache', 'hold', `${file.replace(/[/\\]/g, '-')}.json`);
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** Remembers what was done, so that `undoHold` can take it back. */
export function rememberHold(root: string, file: string, before: string, text: string, replaced: readonly Replaced[]): void {
  const path = pathOf(root, file);
  mkdirSync(dirname(path), { recursive: true });
  const steps = [...stepsOf(path), { before, after: digest(text), replaced }].slice(-KEPT);
  writeWhole(path, `${JSON.stringify(steps, null, 2)}\n`);
}

export interface Undone {
  readonly text: string;
  readonly count: number;
  /** Directives that were edited since, and stay. */
  readonly left: number;
}

/** The text as it was before the last `hold`, for one that reads `text` now; or why there is none. Nothing is written to the note. */
export function undoHold(root: string, file: string, text: string): Undone | string {
  const last = stepsOf(pathOf(root, file)).at(-1);
  if (!last) return `hold has written nothing into ${file} that could be taken back`;
  if (digest(text) === last.after) return { text: last.before, count: last.replaced.length, left: 0 };
  let left = 0;
  const undone = last.replaced.reduceRight((now, { was, written }) => {
    const at = now.lastIndexOf(written);
    if (at < 0) left += 1;
    return at < 0 ? now : now.slice(0, at) + was + now.slice(at + written.length);
  }, text);
  if (left === last.replaced.length) return `${file} was edited since, and none of what hold wrote stands in it as it was`;
  return { text: undone, count: last.replaced.length - left, left };
}

/** Forgets the last step, once it is taken back. */
export function forgetHold(root: string, file: string): void {
  const path = pathOf(root, file);
  writeWhole(path, `${JSON.stringify(stepsOf(path).slice(0, -1), null, 2)}\n`);
}

/** A file that cannot be read remembers nothing: it is a convenience, and never worth a failure. */
function stepsOf(path: string): Step[] {
  if (!existsSync(path)) return [];
  try {
    const steps: unknown = JSON.parse(readFileSync(path, 'utf8'));
    return Array.isArray(steps) ? (steps as Step[]) : [];
  } catch {
    return [];
  }
}
