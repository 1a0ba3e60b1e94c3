/** What a run came to, in the few words by which runs are looked for. */
import { isPresent, type RunFigures } from '../../figures/figure.ts';
import type { Choice } from '../models/discovery.ts';

/** In the order in which they are offered and printed. */
export const OUTCOMES: readonly (Choice & { readonly of: (run: RunFigures) => boolean })[] = [
  { id: 'throttled', title: 'throttled', of: (run) => isPositive(run, 'throttle_events') },
  { id: 'held-at-limit', title: 'held at limit', of: (run) => isPositive(run, 'held_at_limit') },
  { id: 'steady', title: 'steady', of: ({ figures }) => isThere(figures.get('steady_temperature')) },
  { id: 'not-steady', title: 'not steady', of: ({ figures }) => isAbsent(figures.get('steady_temperature'), 'not-steady') },
];

type Entry = ReturnType<RunFigures['figures']['get']>;

/** The outcomes of a run; a run whose log tells none of them has none. */
export function outcomesOf(run: RunFigures): Choice[] {
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
