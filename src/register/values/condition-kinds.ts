/** The conditions that a run can state: how each is read, and what a difference in it may do to the figures. */

export interface ConditionKind {
  /** A quantity of its own reading, words alone, or words that may be a number with its unit. A bare version of a firmware is words. */
  readonly reading: 'ambient' | 'supply' | 'words' | 'words or a quantity';
  /** A value as an author may write it; messages show it. */
  readonly example: string;
  /** What it tells, for the reference. */
  readonly about: string;
  /** What a difference in it may do to the figures: a sentence for readers. */
  readonly effect: string;
  /** Whether readers cannot tell without it that a comparison is fair. */
  readonly needed: boolean;
  /** Whether the day of a run brings it: runs that differ in it alone are repeats. */
  readonly brought: boolean;
  /** What readers call its quantity where one is stated: the words for its address. */
  readonly called: string;
  /** Words that people use around its number, as in the catalogue of figures; '' for conditions in words. */
  readonly spoken: string;
}

/** By name, in the order of their weight: the order of all lists. */
export const CONDITIONS = {
  ambient: {
    reading: 'ambient',
    example: '22.4 ± 0.5 °C',
    about: 'the air around the device, away from its own heat',
    effect:
      'Temperatures follow the ambient about kelvin for kelvin; the rise over ambient takes that off, yet leakage and a fan still follow it.',
    needed: false,
    brought: true,
    called: 'ambient temperature',
    spoken: 'ambient room air',
  },
  supply: {
    reading: 'supply',
    example: '5.1 V',
    about: 'the supply voltage, as measured',
    effect: 'Input current and losses on the board follow the supply voltage.',
    needed: false,
    brought: false,
    called: 'supply',
    spoken: 'supply adapter volts',
  },
  cooling: {
    reading: 'words',
    example: 'heat sink, no fan',
    about: 'what cools the device',
    effect: 'Temperatures, the time that they take to settle and the clock that can be held follow the cooling.',
    needed: true,
    brought: false,
    called: 'cooling',
    spoken: '',
  },
  firmware: {
    reading: 'words',
    example: '1.8',
    about: 'the version of its firmware',
    effect: 'Firmware sets clocks, voltages, limits and fans by its own rules: a difference may be its doing.',
    needed: true,
    brought: false,
    called: 'firmware',
    spoken: '',
  },
  system: {
    reading: 'words',
    example: 'image 4 of 2026-02',
    about: 'the system that it runs',
    effect: 'What a system runs beside the load, and how it builds and schedules programs, changes scores and idle power.',
    needed: true,
    brought: false,
    called: 'system',
    spoken: '',
  },
  workload: {
    reading: 'words',
    example: 'all cores, integer mix 3.1',
    about: 'the load of the load phase',
    effect: 'Power, temperatures and clock under load hold for the workload that made them, and for no other.',
    needed: true,
    brought: false,
    called: 'workload',
    spoken: '',
  },
  orientation: {
    reading: 'words or a quantity',
    example: '90°',
    about: 'how the device lies or stands',
    effect: 'Natural convection carries off more or less heat as the device lies or stands.',
    needed: false,
    brought: false,
    called: 'orientation',
    spoken: '',
  },
  enclosure: {
    reading: 'words',
    example: 'open bench',
    about: 'what is around the device',
    effect: 'An enclosure keeps heat in and shuts moving air out.',
    needed: false,
    brought: false,
    called: 'enclosure',
    spoken: '',
  },
  airflow: {
    reading: 'words or a quantity',
    example: '1.5 m/s',
    about: 'how the air moves',
    effect: 'Moving air carries off more heat than still air.',
    needed: false,
    brought: false,
    called: 'airflow',
    spoken: 'airflow air flow draught',
  },
  peripherals: {
    reading: 'words',
    example: 'one SSD',
    about: 'what else is connected',
    effect: 'What is plugged in draws power of its own, and some of its heat stays with the device.',
    needed: false,
    brought: false,
    called: 'peripherals',
    spoken: '',
  },
  microphone_distance: {
    reading: 'words',
    example: '0.5 m in front',
    about: 'how far the microphone of a sound level stands, and where',
    effect: 'A sound level falls with the distance of the microphone, by about 6 dB where that doubles in the open.',
    needed: false,
    brought: false,
    called: 'microphone distance',
    spoken: '',
  },
  background_sound: {
    reading: 'words or a quantity',
    example: '24.5 ± 0.5 dB(A)',
    about: 'the sound level at the same place with the device off',
    effect: 'A sound level that is near that of the room says more of the room than of the device.',
    needed: false,
    brought: false,
    called: 'background sound',
    spoken: 'background room noise sound level quiet',
  },
} as const satisfies Readonly<Record<string, ConditionKind>>;

export type ConditionName = keyof typeof CONDITIONS;

export const CONDITION_NAMES = Object.keys(CONDITIONS) as readonly ConditionName[];

/** What the day brings, and what runs that repeat each other may differ in. */
export const BROUGHT = CONDITION_NAMES.filter((name) => CONDITIONS[name].brought);

/** Conditions that can be a quantity: their names are addresses of its runs. */
export const MEASURED_CONDITIONS = CONDITION_NAMES.filter((name) => CONDITIONS[name].reading !== 'words');

/** As lists of conditions label it: the name in words. */
export function conditionLabel(name: string): string {
  return name.replaceAll('_', ' ');
}

export function isConditionName(name: string): name is ConditionName {
  return Object.hasOwn(CONDITIONS, name);
}
