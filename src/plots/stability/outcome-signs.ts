/** The signs of what came of a setting. */
import type { Outcome } from '../../figures/stability/ladder.ts';

/** How an outcome is drawn: a sign of its own; colour and filling tell passed, throttled and failed apart. */
export interface Sign {
  readonly shape: string;
  readonly ink: string;
  readonly filled: boolean;
}

const FAILED = 'var(--plot-2)';

export const SIGNS: Readonly<Record<Outcome, Sign>> = {
  passed: { shape: 'circle', ink: 'var(--plot-3)', filled: true },
  throttled: { shape: 'square', ink: 'var(--plot-5)', filled: false },
  restarted: { shape: 'diamond', ink: FAILED, filled: false },
  'wrong results': { shape: 'triangle-up', ink: FAILED, filled: false },
  'hung under load': { shape: 'cross', ink: FAILED, filled: false },
  'hung at boot': { shape: 'triangle-down', ink: FAILED, filled: false },
  'no boot': { shape: 'triangle-left', ink: FAILED, filled: false },
};
