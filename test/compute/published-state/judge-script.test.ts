import { describe, expect, it } from 'vitest';
import { judgeScript } from '../../../src/compute/published-state/judge-script.ts';
import type { Problem } from '../../../src/problem.ts';
import type { PublishedEntry } from '../../../src/register/sealed/published-states.ts';
import { restsOn } from '../../../src/words/directives/stated-report.ts';
import type { Written } from '../../../src/words/written.ts';
import { entry, note, state } from './states.ts';

const SCRIPT = note({ kind: 'script', file: 'content/scripts/larch.md' });

function judged(was: PublishedEntry, is: PublishedEntry, problems: readonly Problem[] = [], instead?: string) {
  const { sentence: _sentence, pattern: _pattern, held: _held, cue: _cue, ...ledger } = is;
  const written: Written = {
    pieces: [],
    plots: [],
    entries: [{ ...ledger, id: 'a.b-00000', file: SCRIPT.file, uncertainty: '', held: [] } as Written['entries'][number]],
    problems,
  };
  return judgeScript(
    SCRIPT,
    written,
    state([was]),
    state([is]),
    () => '2026-04-11',
    () => instead,
  );
}

describe('compute/published-state/judge-script', () => {
  it('keeps what was recorded and gives a correction with its cue time', () => {
    const { corrections, written } = judged(entry('a.b', '71.3 °C', { cue: '3:15' }), entry('a.b', '72.1 °C'));
    expect(written.entries[0]).toMatchObject({ shown: '71.3 °C', value: 71.3 });
    expect(corrections).toEqual([
      {
        since: '2026-04-11',
        number: 'a.b',
        was: '71.3 °C',
        is: '72.1 °C',
        reason: 'The data no longer bears these words.',
        cue: '3:15',
        sentence: 'It reached 71.3 °C.',
      },
    ]);
  });

  it('makes a correction of a stated number that no longer holds, and no problem', () => {
    const stated = { kind: 'stated', shown: 'about 71 degrees', unit: '°C' } as const;
    const differs: Problem = {
      severity: 'error',
      rule: 'stated-differs',
      place: { file: SCRIPT.file, line: 20, column: 12 },
      found: 'stated "about 71 degrees"',
    };
    const other: Problem = { ...differs, place: { ...differs.place, line: 44 } };
    const was = entry('a.b', 'about 71 degrees', { ...stated, verdict: 'holds' });
    const is = entry('a.b', 'about 71 degrees', {
      ...stated,
      verdict: 'fails',
      rests: restsOn('75.0\u00a0°C', '70 °C to 72 °C'),
    });
    const { corrections, written } = judged(was, is, [differs, other]);
    expect(corrections).toMatchObject([{ was: 'about 71 degrees', is: '75.0 °C' }]);
    // In words, where there are any: the correction is read aloud.
    expect(judged(was, is, [differs], 'about 75 degrees').corrections).toMatchObject([{ is: 'about 75 degrees' }]);
    expect(written.problems).toEqual([other]);
    expect(written.entries[0]?.verdict).toBe('holds');
  });

  it('leaves a script as it is where the data bears it', () => {
    const same = entry('a.b', '71.3 °C');
    expect(judged(same, { ...same, value: 71.29 }).corrections).toEqual([]);
  });
});
