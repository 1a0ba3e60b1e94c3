/** A score by the watt and by the joule that it took. */
import { divide } from '../../quantities/arithmetic.ts';
import { absent, isReason, type Reason } from '../absent.ts';
import { type Figure, type From, isPresent } from '../figure.ts';
import { orRefused } from '../joined.ts';
import type { Entry } from '../soak.ts';
import { ofTest, type ScoredTest } from './score-table.ts';

const PER = [
  ['score_per_watt', 'score_power', 'power'],
  ['score_per_joule', 'energy_per_task', 'energy'],
] as const;

/** `score_per_watt.<test>` and `score_per_joule.<test>`, where power or energy of the repeats is known: nothing is said where neither is. */
export function scorePer(test: ScoredTest, score: Figure, had: ReadonlyMap<string, Figure>): Entry[] {
  return PER.flatMap(([name, other, what]): Entry[] => {
    const found = had.get(`${other}.${test.id}`);
    if (found === undefined || !isPresent(found) || !isPresent(score)) return [];
    const outcome = test.better === 'higher' ? orRefused(divide(score.quantity, found.quantity)) : lowerIsBetter(test.title, what);
    const { at } = found.of ?? {};
    const of = { ...ofTest(test), ...(at === undefined ? {} : { at }), ...(found.of?.as_stated ? { as_stated: true } : {}) };
    if (isReason(outcome)) return [[`${name}.${test.id}`, absent(name, { ...outcome, of })]];
    return [[`${name}.${test.id}`, { name, quantity: outcome, from: bothFrom(score.from, found.from), of }]];
  });
}

function lowerIsBetter(title: string, what: string): Reason {
  const why = `Of ${title} less is better: a share of it by ${what} would say nothing. Its energy per task does.`;
  return { absent: 'out-of-range', why };
}

/** The table's columns; those of the log are with the power or energy. */
function bothFrom(score: From, other: From): From {
  if (other.file !== score.file) return other;
  return { ...score, columns: [...new Set([...score.columns, ...other.columns])] };
}
