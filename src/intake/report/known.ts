/** What the author knows of a log and has said why: told on the run's page, and no longer warned of. */
import { type Problem, warning } from '../../problem.ts';
import type { Known, LogDeclaration } from '../log.ts';

export interface Acknowledged {
  /** Whether what was found on a line is known; keeps it for the page. */
  readonly takes: (line: number, found: string) => boolean;
  /** The same for what was found of a whole channel. */
  readonly takesChannel: (channel: string, found: string) => boolean;
  /** The declared entries with what was found on their lines. `found` is printed on the run's page: nothing of a log that does not go out may stand in it. */
  readonly entries: () => readonly (Known & { readonly found: readonly string[] })[];
  /** Entries on whose lines nothing was found in intake: what a later step finds comes too late. Phases are judged where they are put on the log. */
  readonly idle: () => Problem[];
}

/** Where nothing is declared. */
export const NOTHING_KNOWN: Acknowledged = { takes: () => false, takesChannel: () => false, entries: () => [], idle: () => [] };

/** Keeps the account of what a declaration says is known. */
export function acknowledged({ known = [], file }: Pick<LogDeclaration, 'known' | 'file'>): Acknowledged {
  const found = new Map<Known, string[]>(known.map((entry) => [entry, []]));
  const tell = (entry: Known | undefined, what: string) => {
    const told = entry && found.get(entry);
    if (told && !told.includes(what)) told.push(what);
    return entry !== undefined;
  };
  return {
    takes: (line, what) => {
      const entry = known.find((each) => 'fromLine' in each && line >= each.fromLine && line <= each.toLine);
      return tell(entry, what);
    },
    takesChannel: (channel, what) => {
      const entry = known.find((each) => 'channel' in each && each.channel === channel);
      return tell(entry, what);
    },
    entries: () => known.map((entry) => ({ ...entry, found: found.get(entry) as string[] })),
    idle: () =>
      known
        .filter((entry) => !('phase' in entry) && !entry.ofSetup && found.get(entry)?.length === 0)
        .map((entry) => idleEntry(entry, file)),
  };
}

/** "line 8", "lines 10 to 12", "channel soc", "phase load". */
export function whereKnown(known: Known): string {
  if ('phase' in known) return `phase ${known.phase}`;
  if ('channel' in known) return `channel ${known.channel}`;
  const { fromLine, toLine } = known;
  return fromLine === toLine ? `line ${fromLine}` : `lines ${fromLine} to ${toLine}`;
}

function idleEntry(known: Known, file: string): Problem {
  const found =
    'channel' in known
      ? `the ${whereKnown(known)} has readings in most rows of ${file}: nothing is warned of it`
      : `nothing of what is warned of stands on ${whereKnown(known)} of ${file}`;
  const remedy = 'channel' in known ? 'remove this entry' : 'correct the lines, or remove this entry';
  return warning('known-idle', known.place, found, { remedy });
}
