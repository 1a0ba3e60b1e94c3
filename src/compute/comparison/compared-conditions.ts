/** What runs should have in common besides their setting, and what a difference in it may do to the figures. */
import { CONDITION_NAMES, CONDITIONS, type ConditionName } from '../../register/values/condition-kinds.ts';

export interface Aspect {
  /** Label of the condition. */
  readonly label: string;
  /** A sentence. */
  readonly effect: string;
}

export const DEVICE: Aspect = {
  label: 'device',
  effect: 'Two devices differ in all their parts: a difference says nothing of the setting alone.',
};
export const SPECIMEN: Aspect = {
  label: 'specimen',
  effect:
    'Two pieces of one device draw different power and run at different temperatures at one setting: a difference may be theirs.',
};
export const LOAD: Aspect = {
  label: 'length of the load',
  effect: 'Energy grows with the time under load, and peaks and steady states may come after a shorter one has ended.',
};
export const INSTRUMENT = 'The errors of two instruments do not cancel in a difference.';
export const PLACE = 'Losses lie between the two places: such figures are not subtracted from one another.';

/** Conditions in the order of their weight; the ambient is judged by its uncertainty, not by its words. */
export const WORDED: readonly Aspect[] = CONDITION_NAMES.filter((name) => name !== 'ambient').map(aspectOf);
export const AMBIENT = aspectOf('ambient');

/** Without them a reader cannot tell whether the comparison is fair. */
export const NEEDED: readonly string[] = CONDITION_NAMES.filter((name) => CONDITIONS[name].needed);

function aspectOf(name: ConditionName): Aspect {
  return { label: name, effect: CONDITIONS[name].effect };
}
