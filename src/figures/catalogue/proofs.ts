/** Checks against published values that several figures rest on, by their ids. */

export const MEAN = ['gum-4-4-3', 'nist-lew', 'nist-michelso', 'nist-numacc3'] as const;
export const PRODUCT = ['gum-g-4-1', 'gum-h-2', 'shared-gain'] as const;
export const LIMITS = ['rectangular-limits', 'rectangular-sums'] as const;
export const FIT = ['step-response', 'step-fractions'] as const;
