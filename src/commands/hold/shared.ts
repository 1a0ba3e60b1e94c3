/** What several runs share, where the words speak of all of them: "both at 2.0 GHz". */
import { MEASURED_CONDITIONS } from '../../register/values/condition-kinds.ts';
import { holds } from '../../words/stated/holds.ts';
import { isUnread } from '../../words/stated/read.ts';
import type { Asked } from './asked.ts';
import type { Bearing } from './bearing.ts';
import type { Candidate } from './candidates.ts';
import { type Count, groupsOf } from './counts.ts';

const OF_ALL = new Set(['both', 'all', 'each', 'every', 'same']);
/** Settings, conditions and ratings that runs can share. */
const SHARED: readonly string[] = [
  'setting.clock',
  'setting.voltage_offset',
  ...MEASURED_CONDITIONS,
  'device.throttle_at',
  'device.rated_clock',
  'device.supply',
];
/** Right before the number the word speaks of it alone. */
const NEAR = 3;

/** Settings, conditions and ratings of a group, where a word for all of them stands beside the number. */
export function sharedOf({ said, context, inUnitOf }: Asked, { subjects, words, candidates }: Bearing): Count[] {
  const beside = context.filter(({ own, weight }) => own === true && weight > 1 / (1 + NEAR / 8)).map(({ word }) => word);
  if (!beside.some((word) => OF_ALL.has(word))) return [];
  const facts = candidates.filter(({ fact, name, quantity }) => fact && quantity.unit === said.unit && SHARED.includes(name));
  const groups = groupsOf(context, subjects, words);
  return [...Map.groupBy(facts, ({ is }) => is.slice(is.indexOf('.') + 1))].flatMap(([address, of]) => {
    const read = inUnitOf((of[0] as Candidate).quantity.unit);
    const fitting = of
      .filter(({ quantity }) => !isUnread(read) && holds(read, quantity.value, null) !== 'fails')
      .map(({ alias }) => alias);
    const two = fitting.length === 2 ? [{ list: `[${fitting.join(' ')}]`, title: fitting.join(', '), score: 0.1 }] : [];
    return (beside.includes('both') ? two : groups).map(({ list, title, score }) => ({
      is: `same(${list}.${address})`,
      title: `the same in ${title}`,
      score: SHARED_SCORE + score,
    }));
  });
}

/** Before the setting of one of them. */
const SHARED_SCORE = 6;
