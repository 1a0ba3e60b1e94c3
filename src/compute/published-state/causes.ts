/** Why a number changed: which of the things it rests on are not as they were. */
import { listed } from '../../figures/in-words.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import type { Pair } from './match.ts';
import { METHODS, type Sources } from './sources.ts';

export interface Cause {
  /** One clause; several causes are all named. */
  readonly words: string;
  /** The files that are not as they were, or that it now rests on. */
  readonly files: readonly string[];
}

export function causesOfChange({ was, is }: Pair, state: PublishedState, sources: Sources): Cause {
  const then = new Map(state.sources.map(({ name, sha256 }) => [name, sha256]));
  const names = [...new Set(is.held.flatMap((subject) => sources.of(subject)))];
  const changed = names.filter((name) => name !== METHODS && then.has(name) && then.get(name) !== sources.sha256(name));
  const fresh = names.filter((name) => name !== METHODS && !then.has(name));
  // Other data is reason enough; what else was edited meanwhile may have moved nothing.
  const data = changed.filter((name) => name.startsWith('data/'));
  const told = data.length > 0 ? data : changed;
  const byMethods = [...data, ...fresh].length === 0 && then.get(METHODS) !== sources.sha256(METHODS);
  const causes = [
    ...(told.length > 0 ? [`${listed(told)} changed since`] : []),
    ...(fresh.length > 0 ? [`it now rests on ${listed(fresh)}`] : []),
    ...(byMethods ? ['the code of the methods is another'] : []),
  ];
  const files = [...told, ...fresh];
  if (causes.length > 0) return { words: causes.join('; '), files };
  const edited = was.held.join() === is.held.join() ? 'its text asks for it otherwise' : 'its alias stands for something else';
  return { words: edited, files };
}

/** Things that have a cause, put together where their causes share a file, or are the same in words; in the order of the first of each. */
export function byCause<T extends { readonly cause: Cause }>(all: readonly T[]): T[][] {
  const groups: T[][] = [];
  for (const each of all) {
    const joined = groups.filter((group) => group.some((other) => related(other.cause, each.cause)));
    const [first] = joined;
    if (!first) groups.push([each]);
    else first.push(...joined.slice(1).flatMap((group) => groups.splice(groups.indexOf(group), 1)[0] ?? []), each);
  }
  return groups.map((group) => all.filter((each) => group.includes(each)));
}

function related(a: Cause, b: Cause): boolean {
  return a.words === b.words || a.files.some((file) => b.files.includes(file));
}
