/** The examples of the guide: its fences with their kinds, and what stands in code within its sentences. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const GUIDE = join(import.meta.dirname, '../../src/guide');

export interface Fence {
  readonly page: string;
  readonly line: number;
  /** Language and kind, such as `yaml run`; what follows them. */
  readonly kind: string;
  readonly rest: string;
  readonly text: string;
}

export const PAGES: readonly string[] = globSync('*.md', { cwd: GUIDE }).sort();

export const textOf = (page: string): string => readFileSync(join(GUIDE, page), 'utf8');

/** Every fence of the guide, in order. */
export const FENCES: readonly Fence[] = PAGES.flatMap((page) =>
  [...textOf(page).matchAll(/^```(\S+)(?: (\S+))?(?: (.*))?\n([\s\S]*?)^```$/gm)].map(
    ({ index, 1: language = '', 2: name = '', 3: rest = '', 4: text = '' }) => ({
      page,
      line: textOf(page).slice(0, index).split('\n').length,
      kind: `${language} ${name}`.trim(),
      rest,
      text,
    }),
  ),
);

/** How many fences open in the guide, read in another way than above, so that none is overlooked. */
export const OPENED = PAGES.flatMap((page) => textOf(page).split('\n')).filter((line) => /^\s*(?:```|~~~)/.test(line)).length / 2;

export const fencesOf = (...kinds: readonly string[]): Fence[] => FENCES.filter(({ kind }) => kinds.includes(kind));

/** What stands in code within sentences and tables, with its page. */
export const CODES: readonly { readonly page: string; readonly code: string }[] = PAGES.flatMap((page) =>
  [
    ...textOf(page)
      .replaceAll(/^```[\s\S]*?^```$/gm, '')
      .matchAll(/(?<!`)`([^`\n]+)`(?!`)/g),
  ].map(([, code]) => ({ page, code: code! })),
);
