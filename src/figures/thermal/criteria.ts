/** The named criteria of steady state, each with its clause. */

export type Rule =
  /** Largest less smallest over every window of this length, K and s. */
  | { readonly kind: 'change'; readonly most: number; readonly window: number }
  /** Slope of a line over this length, K/s and s, reported for its middle. */
  | { readonly kind: 'slope'; readonly most: number; readonly window: number }
  /** Three readings in a row: largest less smallest, or the largest increase; spaced by a time, or by a share of the time elapsed. */
  | {
      readonly kind: 'readings';
      readonly most: number;
      readonly spacing: number;
      readonly shareOfElapsed: number;
      readonly judged: 'spread' | 'increase';
    }
  /** Distance from the fitted end value, K, or as a share of the step. */
  | { readonly kind: 'within'; readonly most: number; readonly of: 'kelvin' | 'step' };

export interface Criterion {
  readonly name: string;
  /** In words, for readers. */
  readonly words: string;
  readonly source: string;
  readonly rule: Rule;
}

const MINUTE = 60;
const HOUR = 3600;
const SECONDARY = 'clause as quoted by others, the standard itself was not open to us';

const change = (name: string, most: number, window: number, words: string, source: string): Criterion => ({
  name,
  words,
  source,
  rule: { kind: 'change', most, window },
});

export const DEFAULT_CRITERION = '1-k-in-15-min';

/** Every criterion that a run may name under `steady`. The first is the default. */
export const CRITERIA: readonly Criterion[] = [
  change(
    DEFAULT_CRITERION,
    1,
    15 * MINUTE,
    'the smoothed rise over ambient changes by at most 1 K in 15 min',
    `the rule of IEC 60335-2-6 (${SECONDARY}), made stricter: it must stay so to the end of the load`,
  ),
  change(
    'iec-62368-1',
    3,
    30 * MINUTE,
    'the smoothed rise over ambient changes by at most 3 K in 30 min',
    `IEC 62368-1, B.1.6, first alternative (${SECONDARY})`,
  ),
  change(
    'iec-62368-1-below-limit',
    1,
    5 * MINUTE,
    'the smoothed rise over ambient changes by at most 1 K in 5 min; meant for readings at least 10 % under their limit',
    `IEC 62368-1, B.1.6, second alternative (${SECONDARY})`,
  ),
  change(
    'iec-61010-1',
    2,
    HOUR,
    'the smoothed rise over ambient changes by at most 2 K in 1 h',
    `IEC 61010-1 with decision 23 of the committee of testing laboratories, 2000 (${SECONDARY})`,
  ),
  change('bs-1363-1', 1, HOUR, 'the smoothed rise over ambient changes by at most 1 K in 1 h', `BS 1363-1 (${SECONDARY})`),
  change(
    'mil-std-810',
    2,
    HOUR,
    'the smoothed rise over ambient changes by at most 2 K in 1 h',
    'MIL-STD-810, Part One, 5.4, operating item (from memory)',
  ),
  {
    name: 'iec-60034-1',
    words: 'the slope of the rise over ambient is at most 2 K per hour, by a line over 30 min',
    source: `IEC 60034-1, edition 12, thermal equilibrium (${SECONDARY}); the length of the line is ours`,
    rule: { kind: 'slope', most: 2 / HOUR, window: 30 * MINUTE },
  },
  {
    name: 'iec-60598-1',
    words: 'the slope of the rise over ambient is at most 1 K per hour, by a line over 10 min',
    source: `IEC 60598-1, 12.4.1 f (${SECONDARY}); the length of the line is ours`,
    rule: { kind: 'slope', most: 1 / HOUR, window: 10 * MINUTE },
  },
  {
    name: 'iec-61810-7',
    words: 'three smoothed readings 5 min apart differ by at most 1 K',
    source: `IEC 61810-7 (${SECONDARY})`,
    rule: { kind: 'readings', most: 1, spacing: 5 * MINUTE, shareOfElapsed: 0, judged: 'spread' },
  },
  {
    name: 'ul-507',
    words: 'three smoothed readings in a row, spaced by 10 % of the time elapsed but at least 5 min, show no increase above 0.1 K',
    source: `UL 507, 46.1.12 (${SECONDARY}); the 0.1 K that tells an increase from noise are ours`,
    rule: { kind: 'readings', most: 0.1, spacing: 5 * MINUTE, shareOfElapsed: 0.1, judged: 'increase' },
  },
  {
    name: 'ul-1029',
    words: 'three smoothed readings 15 min apart show no increase above 0.1 K',
    source: `UL 1029, 21.1.6 (${SECONDARY}); the 0.1 K that tells an increase from noise are ours`,
    rule: { kind: 'readings', most: 0.1, spacing: 15 * MINUTE, shareOfElapsed: 0, judged: 'increase' },
  },
  {
    name: 'within-3-k',
    words: 'the smoothed rise over ambient is within 3 K of its fitted end value',
    source: 'IEC 60068-1, thermal stability (from memory); the end value is that of the fitted step response',
    rule: { kind: 'within', most: 3, of: 'kelvin' },
  },
  {
    name: 'within-2-percent',
    words: 'the smoothed rise over ambient is within 2 % of the step of its fitted end value',
    source: 'common practice for the settling time of a first-order step response, no source',
    rule: { kind: 'within', most: 0.02, of: 'step' },
  },
];

/** What a criterion allows, in a few words: "at most 1 K in 15 min". */
export function criterionInBrief({ rule }: Criterion): string {
  const time = (seconds: number) => (seconds % HOUR === 0 ? `${seconds / HOUR} h` : `${seconds / MINUTE} min`);
  switch (rule.kind) {
    case 'change':
      return `at most ${rule.most} K in ${time(rule.window)}`;
    case 'slope':
      return `at most ${rule.most * HOUR} K per hour`;
    case 'readings':
      return rule.judged === 'spread'
        ? `three readings ${time(rule.spacing)} apart within ${rule.most} K`
        : `three readings without an increase above ${rule.most} K`;
    case 'within':
      return rule.of === 'kelvin'
        ? `within ${rule.most} K of its end value`
        : `within ${rule.most * 100} % of the step of its end value`;
  }
}

/** Names that `steady` may have. */
export const CRITERION_NAMES: readonly string[] = CRITERIA.map((criterion) => criterion.name);

export function criterionOf(name: string | undefined): Criterion | null {
  return CRITERIA.find((criterion) => criterion.name === (name ?? DEFAULT_CRITERION)) ?? null;
}
