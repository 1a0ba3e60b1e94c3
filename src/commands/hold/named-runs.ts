/** Whether offers are of the runs that a sentence names: the figures of another run may fit by chance. */
import type { Bearing } from './bearing.ts';
import type { ContextWord } from './context.ts';
import type { Offer } from './offers.ts';

/** The runs that the number's own sentence names, where no offer is of one of them; undefined where some are, and where it names none. */
export function namedElsewhere(
  offers: readonly Offer[],
  context: readonly ContextWord[],
  { subjects, words }: Bearing,
): readonly string[] | undefined {
  const said = new Set(context.filter(({ own }) => own === true).map(({ word }) => word));
  const named = [...subjects]
    .filter(([alias, { kind }]) => kind === 'run' && (words.get(alias) ?? [alias]).some((word) => said.has(word)))
    .map(([alias]) => alias);
  const isOf = ({ is }: Offer) => /[*[]/.test(is) || named.some((alias) => new RegExp(`(?<![\\w-])${alias}(?![\\w-])`).test(is));
  return offers.length === 0 || named.length === 0 || offers.some(isOf) ? undefined : named;
}
