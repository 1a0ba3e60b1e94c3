/** Every published value that our numbers are held against. `npm run accuracy` prints them, the method pages show them. */
import { ANALYTIC_CHECKS } from './analytic.ts';
import type { Check } from './check.ts';
import { GUM_CHECKS } from './gum.ts';
import { CORRELATED_CHECKS } from './gum-correlated.ts';
import { INFRARED_CHECKS } from './infrared.ts';
import { INTERVAL_CHECKS } from './intervals.ts';
import { LIMIT_CHECKS } from './limits.ts';
import { MODEL_CHECKS } from './models.ts';
import { NIST_CHECKS } from './nist.ts';
import { READING_CHECKS } from './readings.ts';

export const CHECKS: readonly Check[] = [
  ...NIST_CHECKS,
  ...GUM_CHECKS,
  ...CORRELATED_CHECKS,
  ...INTERVAL_CHECKS,
  ...LIMIT_CHECKS,
  ...MODEL_CHECKS,
  ...INFRARED_CHECKS,
  ...ANALYTIC_CHECKS,
  ...READING_CHECKS,
];
