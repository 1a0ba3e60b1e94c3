/** A clock that was asked for and one that was really there are two quantities: they are not put together. */
import type { Of, Reason } from '../absent.ts';
import { CLOCK_UNSTATED } from '../average.ts';
import type { Figure } from '../figure.ts';

interface Side {
  readonly alias: string;
  readonly figure: Pick<Figure, 'of'>;
}

/**
 * Of which clock a figure of two runs is; nothing where they have none. A requested and a delivered one are refused; where one of the
 * runs does not say, both are named.
 */
export function clocksOf(run: Side, reference: Side): Of | Reason {
  const own = run.figure.of?.clock;
  const base = reference.figure.of?.clock;
  if (own === undefined || base === undefined) return {};
  if (own === base) return { clock: own };
  if (own === CLOCK_UNSTATED || base === CLOCK_UNSTATED) return { clock: `${own} in ${run.alias}, ${base} in ${reference.alias}` };
  return {
    absent: 'different-clocks',
    why: `The clock of ${run.alias} is the ${own} one, that of ${reference.alias} the ${base} one.`,
  };
}
