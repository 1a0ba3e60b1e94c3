/** What an author reads of a claim that the data does not decide as he says, and a reader of one that it does. */
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { Judged, Judgement, Verdict } from '../expression/condition.ts';
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
    found: `the claim "${words}" ${verdict}: ${comparisons.map((each) => inWords(each)).join('; ')}`,
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
  return `${comparisons.map((each) => inWords(each)).join('; ')}: ${OUTCOME[verdict]}`;
}

function inWords({ left, right, difference, interval, standsIn }: Judged): string {
  const against = `${shown(left)} against ${shown(right)}`;
  if (standsIn.length > 0) return `${against}, no verdict, since ${standsIn.join('; ')}`;
  if (interval === null) return `${against}, uncertainty unknown`;
  if (difference.parts !== null && difference.parts.length === 0 && interval[0] === interval[1]) return against;
  return `${against}, a difference of ${shown(difference)}, ${printUncertainty(difference, { interval })}`;
}

function shown(quantity: Quantity): string {
  return printQuantity(quantity).text;
}
