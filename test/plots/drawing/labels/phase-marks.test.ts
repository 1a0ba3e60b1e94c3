import { describe, expect, test } from 'vitest';
import { phaseBands, phaseLabels, phaseRows, phaseSpans } from '../../../../src/plots/drawing/labels/phase-marks.ts';
import { align } from '../../../../src/plots/drawing/lines/align.ts';
import { NARROW, WIDE } from '../../../../src/plots/drawing/size.ts';
import { textWidth } from '../../../../src/plots/drawing/text-width.ts';
import { loggedRun } from '../../../../src/plots/trace/logged-run.ts';
import { subject } from '../../subjects.ts';

const rowsOf = (...subjects: ReturnType<typeof subject>[]) => styledRows(subjects, [0, 1, 2]);
const styledRows = (subjects: ReturnType<typeof subject>[], styles: number[]) => {
  const runs = subjects.map(loggedRun);
  return phaseRows(runs, align(runs), styles);
};
const xOf = (x: number) => (x + 5) * 10;

describe('plots/drawing/labels/phase-marks', () => {
  test('runs of equal phases share a row, and their load is shaded', () => {
    const rows = rowsOf(subject('rated'), subject('fast'));
    expect(rows.map(({ fill }) => fill)).toEqual(['var(--plot-soft)']);
    expect(rows[0]!.stretches.map(({ name }) => name)).toEqual(['idle', 'load', 'cool-down']);
    expect(phaseBands(rows, xOf, 300)).toEqual([{ x: 50, y: 0, x2: 450, y2: 300 }]);
    expect(phaseSpans(rows, xOf, WIDE)).toHaveLength(3);
  });

  test('a run of other phases has a row of its own in its colour, and nothing is shaded', () => {
    const rows = rowsOf(subject('rated'), subject('fast', { load: 1200 }), subject('slow'));
    expect(rows.map(({ fill }) => fill)).toEqual(['var(--plot-soft)', 'var(--plot-2)']);
    expect(phaseBands(rows, xOf, 300)).toEqual([]);
  });

  test('the row of a run wears its style', () => {
    const subjects = [subject('rated'), subject('fast', { load: 900 })];
    expect(styledRows(subjects, [4, 2]).map(({ fill }) => fill)).toEqual(['var(--plot-5)', 'var(--plot-3)']);
  });

  test('borders that differ by less than a hundredth of the axis are one', () => {
    expect(rowsOf(subject('rated'), subject('fast', { load: 2410 }))).toHaveLength(1);
  });

  test('two runs that differ are two rows; a run without phases has none', () => {
    expect(rowsOf(subject('rated'), subject('fast', { load: 900 })).map(({ fill }) => fill)).toEqual([
      'var(--plot-1)',
      'var(--plot-2)',
    ]);
    expect(rowsOf(subject('bare', { noPhases: true }))).toEqual([]);
  });

  test('names do not overlap where phases are narrow', () => {
    const rows = [
      {
        fill: 'x',
        stretches: [
          { name: 'idle', from: -5, to: -4 },
          { name: 'warm-up', from: -4, to: -3 },
          { name: 'load', from: -3, to: 20 },
        ],
      },
    ];
    const labels = phaseLabels(rows, xOf, 250, NARROW);
    labels.slice(1).forEach((label, i) => {
      const before = labels[i]!;
      const half = (text: string) => textWidth(text, NARROW.small) / 2;
      expect(label.x - half(label.text as string)).toBeGreaterThan(before.x + half(before.text as string));
    });
  });
});
