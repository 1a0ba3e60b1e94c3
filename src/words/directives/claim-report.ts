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
export function reportClaim(
  words: string,
  condition: string,
  { verdict, comparisons }: Judgement,
  outcomes: readonly Verdict[],
): ClaimReport {
  return {
    rule: RULE_OF[verdict],
    found: `the claim "${words}" ${verdict}: ${decisive(verdict, comparisons)}`,
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
export function claimRests({ verdict, comparisons }: Judgement): string {
  return `${decisive(verdict, comparisons)}: ${OUTCOME[verdict]}`;
}

/** More members of a group than this are counted, not listed. */
const LISTED = 6;

/** The comparisons that a verdict rests on; of a large group those that are decided otherwise than the rest. */
function decisive(verdict: Verdict, comparisons: readonly JudgedComparison[]): string {
  const group = comparisons.filter(({ of }) => of !== undefined);
  if (group.length <= LISTED) return comparisons.map(inWords).join('; ');
  const counts = (['holds', 'fails', 'cannot be told'] as const).flatMap((each) => {
    const count = comparisons.filter((comparison) => comparison.verdict === each).length;
    return count > 0 ? [{ each, count }] : [];
  });
  const rarest = counts.toSorted((a, b) => a.count - b.count)[0]?.each ?? verdict;
  const shown = comparisons.filter((comparison) => comparison.verdict === rarest).slice(0, LISTED);
  const said = counts.map(({ each, count }) => `${count} of ${comparisons.length} ${IN_GROUP[each]}`).join(', ');
  return `${said}; ${shown.map(inWords).join('; ')}`;
}

const IN_GROUP: Readonly<Record<Verdict, string>> = { holds: 'hold', fails: 'fail', 'cannot be told': 'cannot be told' };

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
