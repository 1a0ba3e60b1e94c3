/** What an author reads of a claim that the data does not hold. */

import { printQuantity } from '../quantities/print.ts';
import type { Quantity } from '../quantities/quantity.ts';
import { isRefusal } from '../quantities/refusal.ts';
import { roundDecimal } from '../quantities/rounding.ts';
import { convert } from '../quantities/units.ts';
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
  return `${against}, a difference of ${shown(difference)} (95 %: ${ends(difference, interval)})`;
}

function shown(quantity: Quantity): string {
  return printQuantity(quantity).text;
}

/** The interval's ends in the unit and to the digits of the printed difference. */
function ends(difference: Quantity, [low, high]: readonly [number, number]): string {
  const print = printQuantity(difference);
  const digits = print.number.split('.')[1]?.length ?? 0;
  const end = (value: number): string => {
    const converted = convert(value, difference.unit, print.unit);
    return roundDecimal(isRefusal(converted) ? value : converted, -digits).replace('-', '−');
  };
  return `${end(low)} to ${end(high)}${print.text.slice(print.number.length)}`;
}
