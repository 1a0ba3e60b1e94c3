/** What an author reads of a claim that the data does not hold. */

import { printQuantity, printUncertainty } from '../quantities/print.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { Judged, Judgement } from './condition.ts';
import type { RuleId } from './rules/rules.ts';

interface ClaimReport {
  readonly rule: RuleId;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

/** The report of a claim that fails or cannot be told, with the numbers that decided. */
export function reportClaim(words: string, condition: string, { verdict, comparisons }: Judgement): ClaimReport {
  const fails = verdict === 'fails';
  const numbers = comparisons.map((each) => inWords(each)).join('; ');
  return {
    rule: fails ? 'claim-fails' : 'claim-undecided',
    found: `the claim "${words}" ${fails ? 'fails' : 'cannot be told'}: ${numbers}`,
    expected: `\`${condition}\` on the 95 % interval`,
    remedy: fails
      ? 'change the words and the condition to what the data says'
      : 'soften the words and the condition, or measure more closely',
  };
}

function inWords({ left, right, difference, interval }: Judged): string {
  const against = `${shown(left)} against ${shown(right)}`;
  if (interval === null) return `${against}, uncertainty unknown`;
  if (difference.parts !== null && difference.parts.length === 0 && interval[0] === interval[1]) return against;
  return `${against}, a difference of ${shown(difference)}, ${printUncertainty(difference, { interval })}`;
}

function shown(quantity: Quantity): string {
  return printQuantity(quantity).text;
}
