/** What runs should have in common besides their setting, and what a difference in it may do to the figures. */

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
export const AMBIENT: Aspect = {
  label: 'ambient',
  effect:
    'Temperatures follow the ambient about kelvin for kelvin; the rise over ambient takes that off, yet leakage and a fan still follow it.',
};
export const LOAD: Aspect = {
  label: 'length of the load',
  effect: 'Energy grows with the time under load, and peaks and steady states may come after a shorter one has ended.',
};
export const INSTRUMENT = 'The errors of two instruments do not cancel in a difference.';
export const PLACE = 'Losses lie between the two places: such figures are not subtracted from one another.';

/** Conditions in words, in the order of their weight. */
export const CONDITIONS: readonly Aspect[] = [
  { label: 'supply', effect: 'Input current and losses on the board follow the supply voltage.' },
  {
    label: 'cooling',
    effect: 'Temperatures, the time that they take to settle and the clock that can be held follow the cooling.',
  },
  { label: 'firmware', effect: 'Firmware sets clocks, voltages, limits and fans by its own rules: a difference may be its doing.' },
  {
    label: 'system',
    effect: 'What a system runs beside the load, and how it builds and schedules programs, changes scores and idle power.',
  },
  { label: 'workload', effect: 'Power, temperatures and clock under load hold for the workload that made them, and for no other.' },
  { label: 'orientation', effect: 'Natural convection carries off more or less heat as the device lies or stands.' },
  { label: 'enclosure', effect: 'An enclosure keeps heat in and shuts moving air out.' },
  { label: 'airflow', effect: 'Moving air carries off more heat than still air.' },
  { label: 'peripherals', effect: 'What is plugged in draws power of its own, and some of its heat stays with the device.' },
];

/** Without them a reader cannot tell whether the comparison is fair. */
export const ASKED_FOR: readonly string[] = ['cooling', 'firmware', 'system', 'workload'];
