/** A script of the tests, written against the invented runs. */
import { type Plan, planScript } from '../../../src/words/script/plan.ts';
import type { Subtitle } from '../../../src/words/script/subtitles.ts';
import { write } from '../../../src/words/write.ts';
import type { Written } from '../../../src/words/written.ts';
import { noteOf, TWO } from '../subjects.ts';

export function scriptOf(text: string): Written {
  return write(noteOf(text, { kind: 'script' }), TWO);
}

export function planned(text: string, options: { pace?: number; subtitles?: readonly Subtitle[] } = {}): Plan {
  const { script, entries } = scriptOf(text);
  return planScript(script!, entries, options);
}

/** So many words. */
export function words(count: number): string {
  return Array.from({ length: count }, (_, index) => `w${index}`).join(' ');
}
