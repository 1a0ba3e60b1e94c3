/** What an author reads of a claim that the data does not decide as he says, and a reader of one that it does. */
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { JudgedComparison, Judgement, Verdict } from '../expression/condition.ts';
import type { RuleId } from '../rules/rules.ts';

interface ClaimReport {
  readonly rule: RuleId;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

const RULE_OF: Readonly<Record<Verdict, RuleId>> = {
  fails: 'claim-fails',
  'cannot be told': 'claim-undecided',
  holds: 'claim-told',
};
const REMEDY: Readonly<Record<Verdict, string>> = {
  fails: 'change the words and the condition to what the data says',
  'cannot be told':
    'soften the words and the condition, measure more closely, or let it be published with `outcome="holds or untold"`',
  holds: 'say what the data now tells, and take `outcome` out',
};

/** The report of an outcome that may not be published, with the numbers that decided. */
export function reportClaim(words: string, condition: string, judgement: Judgement, outcomes: readonly Verdict[]): ClaimReport {
  const { verdict } = judgement;
  return {
    rule: RULE_OF[verdict],
    found: `the claim "${words}" ${verdict}: ${restingOn(judgement)}`,
    expected: `that \`${condition}\` ${outcomes.join(' or ')} on the 95 % interval`,
    remedy: REMEDY[verdict],
  };
}

const OUTCOME: Readonly<Record<Verdict, string>> = {
  fails: 'the condition fails on the 95 % interval',
  'cannot be told': 'this data cannot tell whether the condition holds',
  holds: 'the condition holds on the 95 % interval',
};

/** On what a claim rests, for readers of the page. */
export function claimRests(judgement: Judgement): string {
  return `${restingOn(judgement)}: ${OUTCOME[judgement.verdict]}`;
}

/** More members of a group than this are counted, not listed. */
const LISTED = 6;

/** The comparisons that a verdict rests on; of a large group those that decide it. */
function restingOn({ comparisons, decisive }: Judgement): string {
  const members = membersIn(comparisons);
  if (members.size <= LISTED) return comparisons.map(inWords).join('; ');
  const deciding = membersIn(decisive);
  const verdicts = [...new Set(decisive.map(({ verdict }) => verdict))];
  const each = verdicts.length === 1 ? inGroup(verdicts[0] as Verdict, deciding.size) : deciding.size === 1 ? 'decides' : 'decide';
  const shown = decisive.filter(({ of }) => of === undefined || [...deciding].indexOf(of) < LISTED);
  return `${deciding.size} of ${members.size} ${each}; ${shown.map(inWords).join('; ')}`;
}

function membersIn(comparisons: readonly JudgedComparison[]): ReadonlySet<string> {
  return new Set(comparisons.flatMap(({ of }) => (of === undefined ? [] : [of])));
}

/** "1 fails", "3 fail". */
function inGroup(verdict: Verdict, count: number): string {
  if (verdict === 'cannot be told') return verdict;
  return count === 1 ? verdict : verdict.slice(0, -1);
}

function inWords({ of, ...judged }: JudgedComparison): string {
  return of === undefined ? compared(judged) : `${of} ${compared(judged)}`;
}

function compared({ left, right, difference, interval, standsIn }: JudgedComparison): string {
  const against = `${shown(left)} against ${shown(right)}`;
  if (standsIn.length > 0) return `${against}, no verdict, since ${standsIn.join('; ')}`;
  if (interval === null) return `${against}, uncertainty unknown`;
  if (difference.parts !== null && difference.parts.length === 0 && interval[0] === interval[1]) return against;
  return `${against}, a difference of ${shown(difference)}, ${printUncertainty(difference, { interval })}`;
}

function shown(quantity: Quantity): string {
  return printQuantity(quantity).text;
}
