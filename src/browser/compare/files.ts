/** Files that the page makes: links to them, and their memory given back when others take their place. */
import { el } from './dom.ts';

export interface MadeFiles {
  /** A link that saves a text. */
  link(words: string, file: string, type: string, text: string): HTMLAnchorElement;
  /** Gives back what was linked so far. */
  release(): void;
}

export function madeFiles(): MadeFiles {
  let held: string[] = [];
  return {
    link: (words, file, type, text) => {
      const href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
      held.push(href);
      return el('a', { href, download: file }, words);
    },
    release: () => {
      for (const address of held) URL.revokeObjectURL(address);
      held = [];
    },
  };
}
