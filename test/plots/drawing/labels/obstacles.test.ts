import { describe, expect, test } from 'vitest';
import { freest, hits } from '../../../../src/plots/drawing/labels/obstacles.ts';

const rising = { x: [0, 10, 20, 30], y: [30, 20, 10, 0] };
const box = (left: number, top: number) => ({ left, right: left + 5, top, bottom: top + 5 });

describe('plots/drawing/labels/obstacles', () => {
  test('counts the pieces of lines that touch a box', () => {
    expect(hits(box(12, 12), [rising])).toBe(1);
    expect(hits(box(8, 18), [rising])).toBe(2);
    expect(hits(box(22, 22), [rising])).toBe(0);
    expect(hits(box(0, 0), [])).toBe(0);
  });

  test('a vertical stroke between two points is an obstacle', () => {
    expect(hits(box(4, 40), [{ x: [6, 6], y: [0, 100] }])).toBe(1);
  });

  test('the freest place wins, the first of equals', () => {
    const places = [box(12, 12), box(22, 22), box(0, 0)].map((each, name) => ({ box: each, name }));
    expect(freest(places, [rising]).name).toBe(1);
  });
});
