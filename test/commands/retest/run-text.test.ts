import { describe, expect, test } from 'vitest';
import { namesRun, retestText, withRun } from '../../../src/commands/retest/run-text.ts';

const OLD = `---
title: Fast setting, hour soak
setup: open-bench
date: 2026-03-14
setting:
  clock: 2.6 GHz
log:
  file: larch-2/fast.csv
  redacted: larch-2/fast-redacted.csv
scores: larch-2/fast-scores.csv
surface:
  file: larch-2/fast-surface.csv
  image: larch-2/fast-thermal.csv
  instrument: thermal-camera
readings:
  - quantity: power
    value: 9.5 W
known:
  - lines: 12
    reason: The device restarted.
was: runs/larch-quick/
---

Three steps up.
`;

describe('commands/retest/run-text', () => {
  test('a retest states what the old run states, less what was about its own log', () => {
    const retest = {
      follows: 'larch-fast',
      title: 'Again: fast',
      date: '2026-05-02',
      log: 'larch-2/again.csv',
      scores: 'larch-2/s.csv',
    };
    expect(retestText(OLD, retest)).toBe(`---
title: "Again: fast"
follows: larch-fast
setup: open-bench
date: 2026-05-02
setting:
  clock: 2.6 GHz
log:
  file: larch-2/again.csv
scores: larch-2/s.csv
---
`);
  });

  test('phases of its own take the place of those of the old run, and remarks on the next key stay', () => {
    const old = OLD.replace('scores:', 'phases:\n  load: 300 s .. # by stopwatch\n# From the lab:\nscores:');
    const phases = [{ name: 'load', stretch: '300 .. 1500 s' }];
    const retest = { follows: 'larch-fast', title: 'Again', date: '2026-05-02', log: 'larch-2/again.csv', scores: 'larch-2/s.csv' };
    const text = retestText(old, { ...retest, phases });
    expect(text).toContain('\n# From the lab:\nscores: larch-2/s.csv\nphases:\n  load: 300 .. 1500 s\n---\n');
    expect(text).not.toContain('stopwatch');
  });

  test("the old run's thermal image is none of the new one's", () => {
    const retest = {
      follows: 'larch-fast',
      title: 'Again',
      date: '2026-05-02',
      log: 'larch-2/again.csv',
      surface: 'larch-2/t.csv',
    };
    expect(retestText(OLD, retest)).toContain('surface:\n  file: larch-2/t.csv\n  instrument: thermal-camera\n');
    expect(retestText(OLD, { ...retest, image: 'larch-2/i.csv' })).toContain('  file: larch-2/t.csv\n  image: larch-2/i.csv\n');
  });

  test('a run is named in `runs` and `repeats` alone, as a whole word, and never as an alias', () => {
    const note =
      '---\ntitle: On larch-fast\nruns:\n  larch-fast: larch-fast\n  other: [larch-fast-2, larch-fast]\n---\n\nlarch-fast\n';
    expect(namesRun(note, 'larch-fast')).toBe(true);
    expect(namesRun('---\ntitle: larch-fast\n---\n', 'larch-fast')).toBe(false);
    expect(withRun(note, 'larch-fast', 'larch-new')).toBe(
      '---\ntitle: On larch-fast\nruns:\n  larch-fast: larch-new\n  other: [larch-fast-2, larch-new]\n---\n\nlarch-fast\n',
    );
  });
});
