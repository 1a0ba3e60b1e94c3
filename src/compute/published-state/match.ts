/** Which number of a note now is which of its published state, also where the text between has been edited. */
import type { PublishedEntry, PublishedState } from '../../register/published.ts';

export interface Pair {
  readonly was: PublishedEntry;
  readonly is: PublishedEntry;
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
 * The numbers of two states, and with them those of tables that the data gives in one of the two alone: where the table stands in
 * both, the number became "absent", or took its place.
 */
export function matchStates(was: NumbersOf, is: NumbersOf): Matched {
  const { pairs, removed, added } = matchEntries(was.entries, is.entries);
  const gone = removed.flatMap((entry): Pair[] => {
    const now = absenceOf(entry, is);
    return now ? [{ was: entry, is: now }] : [];
  });
  const come = added.flatMap((entry): Pair[] => {
    const then = absenceOf(entry, was);
    return then ? [{ was: then, is: entry }] : [];
  });
  return {
    pairs: [...pairs, ...gone, ...come],
    removed: removed.filter((entry) => !gone.some((pair) => pair.was === entry)),
    added: added.filter((entry) => !come.some((pair) => pair.is === entry)),
  };
}

type NumbersOf = Pick<PublishedState, 'entries' | 'absent'>;

/** A number of a table as it stands where the table says "absent". It has no value: it equals nothing. */
function absenceOf(entry: PublishedEntry, { absent = [] }: NumbersOf): PublishedEntry | undefined {
  const found = absent.find(({ expression }) => plainExpression(expression) === plainExpression(entry.expression));
  if (entry.kind !== 'table' || !found) return undefined;
  const { line, column, why } = found;
  const sentence = entry.pattern.replace('■', ABSENT);
  return { ...entry, line, column, value: Number.NaN, u: null, shown: ABSENT, verdict: 'cannot be told', rests: why, sentence };
}

/** As tables print it. */
const ABSENT = 'absent';

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

/** An expression less the blanks that mean nothing. */
export function plainExpression(expression: string): string {
  return expression.replaceAll(/\s+/g, ' ').trim();
}
