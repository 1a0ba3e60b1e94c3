import { describe, expect, it } from 'vitest';
import { FAST, reading, report, SETUP } from '../base.ts';

const CAMERA = [
  'content/instruments/camera.md',
  '',
  '---\ntitle: Camera\nmeasures:\n  temperature:\n    accuracy: 2 °C or 2 %, the larger\n---\n',
] as const;
const LISTED = [SETUP, '[inline-meter, on-die]', '[inline-meter, on-die, camera]'] as const;
const surface = (text: string) => [FAST, 'log: larch-2/fast-soak.csv\n', `log: larch-2/fast-soak.csv\n${text}\n`] as const;
const runWith = (text: string) => reading(CAMERA, LISTED, surface(text)).register.runs.get('larch-fast');

describe('register/sections/surface', () => {
  it('a path alone names no instrument', () => {
    const run = runWith('surface: larch-2/other.csv');
    expect(run?.surface).toBe('larch-2/other.csv');
    expect(run).not.toHaveProperty('surfaceInstrument');
  });

  it('a mapping names the instrument too', () => {
    const run = runWith('surface:\n  file: larch-2/other.csv\n  instrument: camera');
    expect([run?.surface, run?.surfaceInstrument]).toEqual(['larch-2/other.csv', 'camera']);
  });

  it.each([
    [
      'surface:\n  file: larch-2/other.csv\n  instrument: camra',
      "11:15: error: instrument-not-listed: the surface was read by `camra`, which is not in the run's list of instruments | expected `inline-meter`, `on-die` or `camera` | did you mean `camera`?",
    ],
    [
      'surface:\n  instrument: camera',
      '10:3: error: missing-key: `surface` names no `file` | write for instance `file: larch-2/fast-surface.csv` below `surface:`',
    ],
    [
      'surface: larch-2/none.csv',
      '9:10: error: data-missing: `surface` is `larch-2/none.csv`, and data/ holds no such file | data/larch-2/ is there, `none.csv` in it is not: check the name',
    ],
  ])('refuses %o', (text, expected) => {
    expect(report(CAMERA, LISTED, surface(text))).toEqual([`content/runs/larch-fast.md:${expected}`]);
  });
});
