/** Which quantity a rank is about: of "the second highest load power" the load power, and no other that happens to be in that order. */
import type { Candidate } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { priorOf } from './hints.ts';
import { type OwnWords, quantityScore, wordsAlone } from './rank.ts';

/** Words of a rank that say its place, or which end is first, and nothing of what is ordered. */
const NO_QUANTITY = new Set(
  (
    'first second third fourth fifth sixth seventh eighth ninth tenth last least most highest lowest largest smallest biggest greatest best worst ' +
    'rank ranks ranked come comes came finish finishes finished place dead time of the all our in no'
  ).split(' '),
);
/** What a superlative is about, in a word that figures are spoken of by. */
const ABOUT: Readonly<Record<string, string>> = {
  coolest: 'hottest',
  coldest: 'hottest',
  warmest: 'hottest',
  hungriest: 'draws',
  thirstiest: 'draws',
  fastest: 'score',
  quickest: 'score',
  slowest: 'score',
  quietest: 'loud',
};
/** Scores as near as this are equal: they are sums of the same numbers. */
const EQUAL = 1e-9;

/**
 * The addresses, behind a run's alias, of the quantity that a rank's sentence names. Of several that it names as well, those that people mean
 * most; none where it names none, or one that no run has.
 */
export function rankedAddresses(
  words: string,
  context: readonly ContextWord[],
  candidates: readonly Candidate[],
  own: OwnWords,
): ReadonlySet<string> {
  const runs = new Set(
    candidates.filter(({ subject }) => subject.kind === 'run').flatMap(({ alias }) => [...(own.get(alias) ?? []), alias]),
  );
  const said = [...context.filter(({ own: mine }) => mine === true), ...wordsAlone(words)]
    .filter(({ word }) => !NO_QUANTITY.has(word) && !runs.has(word))
    .map((each) => ({ ...each, word: ABOUT[each.word] ?? each.word }));
  const scored = candidates
    .filter(({ fact }) => !fact)
    .map((candidate) => ({ candidate, score: quantityScore(candidate, said, own), prior: priorOf(candidate.name) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score);
  const named = scored.filter(({ score }) => score > scored[0]!.score - EQUAL);
  const prior = Math.max(...named.map((each) => each.prior));
  return new Set(
    named
      .filter(({ candidate, ...each }) => candidate.subject.kind === 'run' && each.prior === prior)
      .map(({ candidate: { alias, is } }) => is.slice(alias.length + 1)),
  );
}
