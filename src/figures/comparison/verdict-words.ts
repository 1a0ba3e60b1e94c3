/** The words of verdicts on two settings, and on two runs where the spread between runs of a setting is unknown. */
export const TOLD_APART = 'told apart';
export const NOT_TOLD_APART = 'not told apart';
export const RUNS_DIFFER = 'these two runs differ';
export const RUNS_DO_NOT_DIFFER = 'these two runs do not differ';

/** Verdicts by which two settings, or two runs, are not alike. */
export const DIFFERS: readonly unknown[] = [TOLD_APART, RUNS_DIFFER];
