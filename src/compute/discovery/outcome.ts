/** What a run came to, in the few words by which runs are looked for. */
import { isPresent, type RunFigures } from '../../figures/figure.ts';
import type { Outcome as Tried } from '../../figures/stability/ladder.ts';
import { FAILED } from '../contents/tried-setting.ts';
import type { Choice } from '../models/discovery.ts';

/** A run with what came of its setting where that was tried on its specimen. */
interface Told {
  readonly derived: RunFigures;
  readonly tried: readonly Tried[];
}

/** In the order in which they are offered and printed. */
export const OUTCOMES: readonly (Choice & { readonly of: (run: Told) => boolean })[] = [
  { id: 'throttled', title: 'throttled', of: ({ derived }) => isPositive(derived, 'throttle_events') },
  { id: 'held-at-limit', title: 'held at limit', of: ({ derived }) => isPositive(derived, 'held_at_limit') },
  { id: 'steady', title: 'steady', of: ({ derived }) => isThere(derived.figures.get('steady_temperature')) },
  { id: 'not-steady', title: 'not steady', of: ({ derived }) => isAbsent(derived.figures.get('steady_temperature'), 'not-steady') },
  {
    id: 'too-short',
    title: 'too short to settle',
    of: ({ derived }) => isAbsent(derived.figures.get('steady_temperature'), 'too-short'),
  },
  ...FAILED.map((outcome) => ({
    id: `${outcome.replaceAll(' ', '-')}-when-tried`,
    title: `${outcome} when tried`,
    of: ({ tried }: Told) => tried.includes(outcome),
  })),
];

type Entry = ReturnType<RunFigures['figures']['get']>;

/** The outcomes of a run; a run whose log tells none of them has none. */
export function outcomesOf(run: Told): Choice[] {
  return OUTCOMES.filter(({ of }) => of(run)).map(({ id, title }) => ({ id, title }));
}

/** Whether a figure of that name, of any channel, is above zero. */
function isPositive({ figures }: RunFigures, name: string): boolean {
  return [...figures.values()].some((figure) => figure.name === name && isPresent(figure) && figure.quantity.value > 0);
}

function isThere(figure: Entry): boolean {
  return figure !== undefined && isPresent(figure);
}

function isAbsent(figure: Entry, code: string): boolean {
  return figure !== undefined && !isPresent(figure) && figure.absent === code;
}
