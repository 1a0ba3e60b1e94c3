/** A choice as typed or pressed → what is written. */
import { evaluate } from '../../words/expression/expression.ts';
import type { Subject } from '../../words/written.ts';
import type { Choice } from './apply.ts';
import type { ListedNumber } from './numbers.ts';
import type { Wanted } from './options.ts';
import { valueForm } from './value-form.ts';

type Subjects = ReadonlyMap<string, Subject>;

/** Why a choice cannot be. */
export interface Refused {
  readonly refused: string;
}

export function isRefused(choice: Choice | Refused): choice is Refused {
  return typeof choice === 'object' && 'refused' in choice;
}

function refuse(refused: string): Refused {
  return { refused };
}

/** The choice for a number, or why it cannot be. */
export function choiceOf(listed: ListedNumber, wanted: Wanted, subjects: Subjects): Choice | Refused {
  const name = `number ${listed.number} (${listed.words})`;
  if (listed.why !== undefined) return refuse(`${name} cannot be held as it stands: ${listed.why}`);
  if (wanted === 'free') return 'free';
  if (wanted.as === 'instead') return insteadOf(listed, wanted.offer, name);
  const is = 'is' in wanted ? wanted.is : listed.offers[wanted.offer - 1]?.is;
  if (is === undefined) {
    const fits = listed.offers.length === 1 ? '1 that fits' : `${listed.offers.length} that fit`;
    return refuse(`${name} has ${fits}, and no ${'offer' in wanted ? wanted.offer : ''}`);
  }
  if (listed.offers.some(({ claim }) => claim))
    return wanted.as === 'stated' ? { is, claim: true } : refuse(`${name} is held by a claim, which prints no value`);
  const offered = listed.offers.find((offer) => offer.is === is)?.unit;
  if (wanted.as === 'stated') return { is, ...(offered === undefined ? {} : { unit: offered }) };
  return printedBy(listed, is, subjects, name);
}

function insteadOf({ near }: ListedNumber, offer: number, name: string): Choice | Refused {
  const miss = near[offer - 1];
  if (!miss) return refuse(`${name} has ${near.length} near misses, and no ${offer}`);
  if (miss.instead === undefined) return refuse(`the words of ${name} cannot say ${miss.shown}`);
  return { is: miss.is, instead: miss.instead };
}

function printedBy({ words, unit }: ListedNumber, is: string, subjects: Subjects, name: string): Choice | Refused {
  const evaluated = evaluate(is, subjects, { file: '', line: 1, column: 1 });
  if ('problems' in evaluated) return refuse(`${is} has no value: ${evaluated.problems.map(({ found }) => found).join('; ')}`);
  const value = valueForm(words, is, evaluated.quantity, unit);
  return value === undefined ? refuse(`${name} cannot be printed by a value: hold its words`) : { is, value };
}
