/** Attempts by setting: a setting passed where every attempt at it did, on every specimen that it was tried on. */
import { duration } from '../in-words.ts';
import type { Attempt, Ladder, Outcome } from './ladder.ts';
import { OUTCOMES } from './ladder.ts';

export interface Tried extends Attempt {
  readonly specimen: string;
}

/** All attempts at one clock and voltage offset. */
export interface Setting {
  readonly clock: number;
  readonly clockDigit?: number;
  readonly offset: number;
  readonly tried: readonly Tried[];
  /** The worst that came of it. */
  readonly outcome: Outcome;
}

/** Settings of some ladders, by voltage offset, then clock, ascending. */
export function settingsOf(ladders: readonly Ladder[]): Setting[] {
  const bySetting = new Map<string, Tried[]>();
  for (const { specimen, attempts } of ladders) {
    for (const attempt of attempts) {
      const key = `${attempt.clock} ${attempt.offset}`;
      bySetting.set(key, [...(bySetting.get(key) ?? []), { ...attempt, specimen }]);
    }
  }
  const settings = [...bySetting.values()].map((tried) => ({
    ...clockOf(tried),
    offset: tried[0]!.offset,
    tried,
    outcome: worstOf(tried),
  }));
  return settings.sort((a, b) => a.offset - b.offset || a.clock - b.clock);
}

/** The clock that all were tried at, as the one who wrote most of its digits has it. */
function clockOf(tried: readonly Tried[]): Pick<Setting, 'clock' | 'clockDigit'> {
  const digits = tried.flatMap(({ clockDigit }) => clockDigit ?? []);
  return { clock: tried[0]!.clock, ...(digits.length > 0 && { clockDigit: Math.min(...digits) }) };
}

/** Outcomes are listed from the worst on. */
function worstOf(tried: readonly Tried[]): Outcome {
  return OUTCOMES[Math.min(...tried.map(({ outcome }) => OUTCOMES.indexOf(outcome)))]!;
}

export function hasPassed({ outcome }: Setting): boolean {
  return outcome === 'passed';
}

/** "1 specimen, 2 × 60 min": on how many specimens a setting was tried, how often and for how long. */
export function basisOf({ tried }: Setting): string {
  const specimens = new Set(tried.map(({ specimen }) => specimen)).size;
  const times = new Map<number, number>();
  for (const { passing } of tried) if (passing) times.set(passing.duration, (times.get(passing.duration) ?? 0) + 1);
  const soaks = [...times].sort(([a], [b]) => b - a).map(([seconds, count]) => `${count} × ${duration(seconds)}`);
  return [`${specimens} ${specimens === 1 ? 'specimen' : 'specimens'}`, ...soaks].join(', ');
}
