/** Which number of a note now is which of its published state, also where the text between has been edited. */
import type { PublishedEntry, PublishedState } from '../../register/sealed/published-states.ts';
import { plainExpression } from '../../words/expression/plain-expression.ts';

export interface Pair {
  readonly was: PublishedEntry;
  readonly is: PublishedEntry;
  /** What a note may say in the place of a number that the data no longer gives. */
  readonly instead?: string;
}

export interface Matched {
  /** In the order of the note as it is. */
  readonly pairs: readonly Pair[];
  readonly removed: readonly PublishedEntry[];
  readonly added: readonly PublishedEntry[];
}

/**
 * Numbers belong together where kind and expression are the same: first those in the same sentence, then those that stand beside
 * the same words, then the rest in their order.
 */
export function matchEntries(was: readonly PublishedEntry[], is: readonly PublishedEntry[]): Matched {
  const partner = new Map<PublishedEntry, PublishedEntry>();
  const taken = new Set<PublishedEntry>();
  for (const trait of [whole, beside, nothing]) {
    const free = groupsOf(
      was.filter((entry) => !taken.has(entry)),
      trait,
    );
    for (const entry of is.filter((each) => !partner.has(each))) {
      const found = free.get(keyOf(entry, trait))?.shift();
      if (found === undefined) continue;
      partner.set(entry, found);
      taken.add(found);
    }
  }
  return {
    pairs: is.flatMap((entry) => (partner.has(entry) ? [{ was: partner.get(entry)!, is: entry }] : [])),
    removed: was.filter((entry) => !taken.has(entry)),
    added: is.filter((entry) => !partner.has(entry)),
  };
}

/**
 * The numbers of two states, and with them those that the text asks for in both and the data gives in one alone: such a number became
 * "absent", or took the place of that word.
 */
export function matchStates(was: NumbersOf, is: NumbersOf): Matched {
  const { pairs, removed, added } = matchEntries(was.entries, is.entries);
  const gone = withAbsences(removed, is).map(
    ([entry, now, instead]): Pair => ({ was: entry, is: now, ...(instead && { instead }) }),
  );
  const come = withAbsences(added, was).map(([entry, then]): Pair => ({ was: then, is: entry }));
  return {
    pairs: [...pairs, ...gone, ...come],
    removed: removed.filter((entry) => !gone.some((pair) => pair.was === entry)),
    added: added.filter((entry) => !come.some((pair) => pair.is === entry)),
  };
}

type NumbersOf = Pick<PublishedState, 'entries' | 'absent'>;

/** Entries with the absence of the same kind and expression, each absence once. */
function withAbsences(
  entries: readonly PublishedEntry[],
  { absent = [] }: NumbersOf,
): (readonly [entry: PublishedEntry, absence: PublishedEntry, instead: string | undefined])[] {
  const left = [...absent];
  return entries.flatMap((entry) => {
    const at = left.findIndex(
      ({ kind, expression }) => kind === entry.kind && plainExpression(expression) === plainExpression(entry.expression),
    );
    const [found] = at < 0 ? [] : left.splice(at, 1);
    return found ? [[entry, asAbsent(entry, found), found.instead] as const] : [];
  });
}

/** A number as it stands where the data does not give it: without a value, so that it equals nothing. The author's own words stay. */
function asAbsent(
  entry: PublishedEntry,
  { line, column, why, held = entry.held }: NonNullable<NumbersOf['absent']>[number],
): PublishedEntry {
  const ownWords = entry.kind === 'stated' || entry.kind === 'claim';
  const said = ownWords ? {} : { shown: ABSENT, sentence: entry.sentence.replace(entry.shown, ABSENT) };
  return { ...entry, line, column, value: Number.NaN, u: null, verdict: 'cannot be told', rests: why, held, ...said };
}

/** As tables print it. */
export const ABSENT = 'absent';

type Trait = (entry: PublishedEntry) => string;

const whole: Trait = ({ pattern }) => pattern;
/** The two words before the number and the two behind it. */
const beside: Trait = ({ pattern }) => {
  const words = pattern.split(' ');
  const at = words.findIndex((word) => word.includes('■'));
  return words.slice(Math.max(0, at - 2), at + 3).join(' ');
};
const nothing: Trait = () => '';

function keyOf(entry: PublishedEntry, trait: Trait): string {
  return JSON.stringify([entry.kind, plainExpression(entry.expression), trait(entry)]);
}

function groupsOf(entries: readonly PublishedEntry[], trait: Trait): Map<string, PublishedEntry[]> {
  return Map.groupBy(entries, (entry) => keyOf(entry, trait));
}
