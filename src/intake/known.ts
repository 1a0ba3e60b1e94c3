/** What the author knows of a log and has said why: told on the run's page, and no longer warned of. */
import { type Problem, warning } from '../problem.ts';
import type { Known, LogDeclaration } from './log.ts';

export interface Acknowledged {
  /** Whether what was found on a line is known; keeps it for the page. */
  readonly takes: (line: number, found: string) => boolean;
  /** The declared entries with what was found on their lines. */
  readonly entries: () => readonly (Known & { readonly found: readonly string[] })[];
  /** Entries on whose lines nothing was found. */
  readonly idle: () => Problem[];
}

/** Where nothing is declared. */
export const NOTHING_KNOWN: Acknowledged = { takes: () => false, entries: () => [], idle: () => [] };

/** Keeps the account of what a declaration says is known. */
export function acknowledged({ known = [], file }: Pick<LogDeclaration, 'known' | 'file'>): Acknowledged {
  const found = new Map<Known, string[]>(known.map((entry) => [entry, []]));
  return {
    takes(line, what) {
      const entry = known.find(({ fromLine, toLine }) => line >= fromLine && line <= toLine);
      const told = entry && found.get(entry);
      if (told && !told.includes(what)) told.push(what);
      return entry !== undefined;
    },
    entries: () => known.map((entry) => ({ ...entry, found: found.get(entry) as string[] })),
    idle: () => known.filter((entry) => found.get(entry)?.length === 0).map((entry) => idleEntry(entry, file)),
  };
}

function idleEntry({ fromLine, toLine, place }: Known, file: string): Problem {
  const lines = fromLine === toLine ? `line ${fromLine}` : `lines ${fromLine} to ${toLine}`;
  return warning('known-idle', place, `nothing of what is warned of stands on ${lines} of ${file}`, {
    remedy: 'correct the lines, or remove this entry',
  });
}
