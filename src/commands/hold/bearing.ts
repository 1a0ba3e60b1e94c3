/** What a note's numbers may rest on, with the words that tell its parts apart. */
import type { Subject } from '../../words/written.ts';
import { type Candidate, candidatesOf } from './candidates.ts';
import { hintsOf } from './hints.ts';
import { type Pair, pairsOf } from './pairs.ts';
import { detailWords, type OwnWords } from './rank.ts';

export interface Bearing {
  readonly subjects: ReadonlyMap<string, Subject>;
  readonly candidates: readonly Candidate[];
  /** Of two candidates, as far as people speak of them. */
  readonly differences: readonly Pair[];
  readonly ratios: readonly Pair[];
  readonly words: OwnWords;
}

/** Prepared once for a note. */
export function bearingOf(subjects: ReadonlyMap<string, Subject>): Bearing {
  const candidates = candidatesOf(subjects);
  const [differences, ratios] = [pairsOf(candidates, '-'), pairsOf(candidates, '/')];
  return {
    subjects,
    candidates,
    differences,
    ratios,
    words: new Map([...ownDetails(candidates), ...aliasWords(subjects, candidates)]),
  };
}

/** The words of each detail that no other has; all of its words where every one is shared. */
function ownDetails(candidates: readonly Candidate[]): OwnWords {
  const details = [...new Set(candidates.flatMap((candidate) => candidate.details))];
  return new Map(
    details.map((detail) => {
      const own = detailWords(detail);
      const others = new Set(details.filter((other) => other !== detail).flatMap(detailWords));
      const alone = own.filter((word) => !others.has(word));
      return [detail, alone.length > 0 ? alone : own];
    }),
  );
}

/** The alias, its parts, and words of its title that it alone has and that name no figure. */
function aliasWords(subjects: ReadonlyMap<string, Subject>, candidates: readonly Candidate[]): OwnWords {
  const titles = [...subjects].map(([alias, { title }]) => [alias, wordsOf(title)] as const);
  const hints = new Set([...new Set(candidates.map(({ name }) => name))].flatMap(hintsOf));
  return new Map(
    titles.map(([alias, words]) => {
      const others = new Set([...hints, ...titles.filter(([other]) => other !== alias).flatMap(([, each]) => each)]);
      return [alias, [...new Set([alias.toLowerCase(), ...wordsOf(alias), ...words.filter((word) => !others.has(word))])]];
    }),
  );
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word.length > 3);
}
