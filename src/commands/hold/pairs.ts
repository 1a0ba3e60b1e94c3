/** Differences and ratios of two figures, as far as people speak of them. */
import type { Candidate } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { priorOf } from './hints.ts';
import { isCommon, isNamed, unitSaid } from './named.ts';
import { type OwnWords, strongest } from './rank.ts';

export interface Pair {
  readonly left: Candidate;
  readonly right: Candidate;
  readonly operator: '-' | '/';
  readonly is: string;
}

/** Unlike figures of one run that people subtract: the first less the second. */
const SUBTRACTED: ReadonlyMap<string, readonly string[]> = new Map([
  ['peak_temperature', ['ambient', 'idle_temperature', 'steady_temperature']],
  ['steady_temperature', ['ambient', 'idle_temperature']],
  ['end_temperature', ['ambient']],
  ['idle_temperature', ['ambient']],
  ['device.throttle_at', ['peak_temperature', 'steady_temperature']],
  ['setting.clock', ['mean_clock', 'lowest_clock', 'device.rated_clock']],
  ['phase_duration', ['time_to_throttle', 'time_to_steady_state']],
  ['load_power', ['idle_power']],
  ['peak_power', ['load_power', 'idle_power']],
  ['load_current', ['idle_current']],
]);
/** The same for ratios: the first over the second. */
const DIVIDED: ReadonlyMap<string, readonly string[]> = new Map([
  ['load_power', ['idle_power']],
  ['peak_power', ['idle_power', 'load_power']],
  ['load_current', ['idle_current']],
  ['time_below_setting', ['phase_duration']],
  ['held_at_limit', ['phase_duration']],
  ['time_to_throttle', ['phase_duration']],
  ['time_to_steady_state', ['phase_duration']],
  ['mean_clock', ['setting.clock']],
  ['lowest_clock', ['setting.clock']],
  ['setting.clock', ['device.rated_clock']],
]);

/** All that may be meant, whether or not its figures are named: one figure of two runs, of two places of one run, or two that belong together. */
export function pairsOf(candidates: readonly Candidate[], operator: Pair['operator']): Pair[] {
  const pairs: Pair[] = [];
  for (const [unit, alike] of Map.groupBy(candidates, ({ quantity }) => quantity.unit)) {
    for (const left of alike) {
      for (const right of alike) {
        if (left !== right && belong(left, right, operator, unit))
          pairs.push({ left, right, operator, is: `${left.is} ${operator} ${right.is}` });
      }
    }
  }
  return pairs;
}

function belong(left: Candidate, right: Candidate, operator: Pair['operator'], unit: string): boolean {
  const alike = left.name === right.name;
  // What is the same by its nature differs by nothing, and is no news.
  if (alike && left.quantity.value === right.quantity.value && (left.fact || left.alias === right.alias)) return false;
  if (left.quantity.value === 0 || right.quantity.value === 0) return false;
  if (left.subject.kind !== right.subject.kind || left.subject.kind === 'comparison') return false;
  if (left.alias !== right.alias) return alike && left.details.join('.') === right.details.join('.');
  if (alike) return unit !== '1' && (left.subject.kind === 'run' || operator === '-');
  const partners = (operator === '-' ? SUBTRACTED : DIVIDED).get(left.name) ?? [];
  return partners.includes(right.name) && left.details.length === 0 && right.details.length === 0;
}

/** A ratio without a name is one of these: of power, of clocks. */
const READY = 0.5;
/** Figures that a sentence may speak of by naming what was tested or touched alone. */
const BY_DETAIL = new Set(['score', 'surface', 'hottest_surface']);

/** Whether the words around a number speak of the figures of a pair: by name, by what was tested, or because write-ups are about them. */
export function isSpokenOf({ left, right, operator }: Pair, context: readonly ContextWord[], words: OwnWords): boolean {
  const own = context.filter((word) => word.own === true);
  const isSaid = (detail: string) => strongest(own, words.get(detail) ?? []) > 0;
  if (left.name === right.name) {
    const places = left.alias === right.alias ? [...left.details, ...right.details] : [];
    if (!places.every(isSaid)) return false;
    const ready = operator === '-' ? isCommon(left.name) : priorOf(left.name) >= READY || unitSaid(left.quantity.unit, context) > 0;
    return ready || isNamed(left.name, context) || (BY_DETAIL.has(left.name) && left.details.some(isSaid));
  }
  return [left, right].every(({ name }, index) => {
    const other = index === 0 ? right.name : left.name;
    return name === 'phase_duration' || isCommon(name) || isNamed(name, context, other);
  });
}
