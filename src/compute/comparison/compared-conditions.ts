/** What runs should have in common besides their setting, and what a difference in it may do to the figures. */
import { CONDITION_NAMES, CONDITIONS, type ConditionName, conditionLabel } from '../../register/values/condition-kinds.ts';

export interface Aspect {
  /** Label of the condition. */
  readonly label: string;
  /** A sentence. */
  readonly effect: string;
  /** Whether it can be a quantity, whose uncertainty then says what differs. */
  readonly measured?: boolean;
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

/** Conditions in the order of their weight; the ambient under load is a figure, and judged by a rule of its own. */
export const STATED: readonly Aspect[] = CONDITION_NAMES.filter((name) => name !== 'ambient').map(aspectOf);
export const AMBIENT = aspectOf('ambient');

/** Without them a reader cannot tell whether the comparison is fair. */
export const NEEDED: readonly string[] = CONDITION_NAMES.filter((name) => CONDITIONS[name].needed).map(conditionLabel);

function aspectOf(name: ConditionName): Aspect {
  const { effect, reading } = CONDITIONS[name];
  return { label: conditionLabel(name), effect, measured: reading !== 'words' };
}
