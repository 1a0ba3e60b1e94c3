/** The words of a script one by one: as they print, and as they are said. */
import { spoken } from '../stated/spoken.ts';
import type { LedgerEntry } from '../written.ts';
import type { SaidPiece } from './script.ts';

/** What stands between two blanks. */
export interface Token {
  /** "58.3 °C," */
  readonly shown: string;
  /** "fifty-eight point three degrees," */
  readonly said: string;
  /** Spoken words in it: what stands between blanks and holds a letter or digit. A dash is none. */
  readonly words: number;
  /** Held numbers that begin in it. */
  readonly held: readonly number[];
}

/** How an entry of the ledger is said: a value in words, the author's own words as they are. */
export function sayEntry(entry: Pick<LedgerEntry, 'kind' | 'shown'>): string {
  return isOwnWords(entry) ? entry.shown : spoken(entry.shown);
}

/** Spoken words of a text. */
export function countWords(said: string): number {
  return said.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}

/** The tokens of a block. A value stays in one token, with the signs that touch it. */
export function tokensOf(pieces: readonly SaidPiece[], entries: readonly LedgerEntry[]): Token[] {
  const tokens: Token[] = [];
  let open = { shown: '', said: '', held: [] as number[] };
  const close = (): void => {
    if (open.shown !== '') tokens.push({ ...open, words: countWords(open.said) });
    open = { shown: '', said: '', held: [] };
  };
  const add = (shown: string, said: string): void => {
    open = { ...open, shown: open.shown + shown, said: open.said + said };
  };
  for (const piece of pieces) {
    const entry = typeof piece === 'string' ? undefined : entries[piece.held - 1];
    if (typeof piece !== 'string') open.held.push(piece.held);
    if (entry && !isOwnWords(entry)) {
      add(entry.shown, sayEntry(entry));
      continue;
    }
    for (const part of (typeof piece === 'string' ? piece : (entry?.shown ?? '')).split(/([ \t\r\n]+)/)) {
      if (/^[ \t\r\n]/.test(part)) close();
      else add(part, part);
    }
  }
  close();
  return tokens;
}

function isOwnWords({ kind }: Pick<LedgerEntry, 'kind'>): boolean {
  return kind === 'stated' || kind === 'claim';
}
