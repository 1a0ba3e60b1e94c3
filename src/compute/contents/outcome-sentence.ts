/** What a run came to, in words: from its figures alone. */
import type { FigureName } from '../../figures/catalogue.ts';
import { type Figure, isPresent, type RunFigures } from '../../figures/figure.ts';
import { printQuantity } from '../../quantities/print.ts';

/**
 * What a run came to in one sentence, from its figures: "Throttled after 19.7 min, kept 93.6 % of its clock, spent 41.6 min at its
 * temperature limit."; '' where they tell nothing of it.
 */
export function outcomeSentence(run: RunFigures): string {
  const parts = throttledParts(run) ?? settledParts(run) ?? unsettledParts(run);
  return parts.length === 0 ? '' : `${parts.join(', ')}.`;
}

function told({ figures }: RunFigures, name: FigureName, unit?: string): string | undefined {
  const figure = figures.get(name);
  return figure && isPresent(figure) ? printQuantity(figure.quantity, unit === undefined ? {} : { unit }).text : undefined;
}

function clause(text: string | undefined, words: (text: string) => string): string[] {
  return text === undefined ? [] : [words(text)];
}

function throttledParts(run: RunFigures): string[] | null {
  const after = told(run, 'time_to_throttle');
  if (after === undefined) return null;
  const held = isPositive(run.figures.get('held_at_limit')) ? told(run, 'held_at_limit') : undefined;
  return [
    `Throttled after ${after}`,
    ...clause(told(run, 'sustained_ratio', '%'), (kept) => `kept ${kept} of its clock`),
    ...clause(held, (time) => `spent ${time} at its temperature limit`),
  ];
}

function settledParts(run: RunFigures): string[] | null {
  const settled = told(run, 'steady_temperature');
  if (settled === undefined) return null;
  const when = clause(told(run, 'time_to_steady_state'), (time) => ` after ${time}`).join('');
  const room = clause(told(run, 'throttle_headroom'), (kelvin) => `${kelvin} below its throttle limit at the hottest reading`);
  return [`Settled at ${settled}${when}`, ...room];
}

/** Why a run has no steady temperature, in words. */
const UNSETTLED: Readonly<Record<string, string>> = {
  'not-steady': 'Had not settled when the load ended',
  'too-short': 'Ended before it could settle',
};

function unsettledParts(run: RunFigures): string[] {
  const peak = told(run, 'peak_temperature');
  const steady = run.figures.get('steady_temperature');
  const why = steady && !isPresent(steady) ? UNSETTLED[steady.absent] : undefined;
  if (why === undefined) return clause(peak, (hottest) => `Hottest reading ${hottest}`);
  return [why, ...clause(peak, (hottest) => `hottest reading ${hottest}`)];
}

function isPositive(figure: Figure | undefined): boolean {
  return figure !== undefined && isPresent(figure) && figure.quantity.value > 0;
}
