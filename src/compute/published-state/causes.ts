/** Why a number changed: which of the things it rests on are not as they were. */
import { listed } from '../../figures/in-words.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import type { Pair } from './match.ts';
import { METHODS, type Sources } from './sources.ts';

/** One clause in words; several causes are all named. */
export function causesOfChange({ was, is }: Pair, state: PublishedState, sources: Sources): string {
  const then = new Map(state.sources.map(({ name, sha256 }) => [name, sha256]));
  const names = [...new Set(is.held.flatMap((subject) => sources.of(subject)))];
  const changed = names.filter((name) => name !== METHODS && then.has(name) && then.get(name) !== sources.sha256(name));
  const fresh = names.filter((name) => name !== METHODS && !then.has(name));
  const causes = [
    ...(changed.length > 0 ? [`${listed(changed)} changed since`] : []),
    ...(fresh.length > 0 ? [`it now rests on ${listed(fresh)}`] : []),
    ...(then.get(METHODS) === sources.sha256(METHODS) ? [] : ['the code of the methods is another']),
  ];
  if (causes.length > 0) return causes.join('; ');
  return was.held.join() === is.held.join() ? 'its text asks for it otherwise' : 'its alias stands for something else';
}
