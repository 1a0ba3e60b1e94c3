import { describe, expect, it } from 'vitest';
import {
  leftText,
  nextTop,
  placeAt,
  previousTop,
  shownAt,
  speedOf,
  stepOf,
  topOf,
  within,
} from '../../src/browser/prompter-motion.ts';

describe('browser/prompter-motion', () => {
  it('moves so fast that the words last as long as the pace says', () => {
    const [extent, words, pace] = [9000, 450, 150];
    expect(extent / speedOf(extent, words, pace)).toBeCloseTo((words * 60) / pace, 9);
    expect(speedOf(extent, 0, pace)).toBe(0);
  });

  it('goes by whole steps from where it began, where less motion is wished', () => {
    expect([100, 299, 300, 501].map((at) => shownAt(at, 100, 200))).toEqual([100, 100, 300, 500]);
    expect(shownAt(123.4, 100, null)).toBe(123.4);
  });

  it('steps by whole lines, and by one line at least', () => {
    expect(stepOf(900, 90)).toBe(360);
    expect(stepOf(200, 90)).toBe(90);
  });

  it('finds the section behind and before', () => {
    const tops = [400, 1200, 3000];
    expect(nextTop(tops, 400)).toBe(1200);
    expect(nextTop(tops, 3000)).toBeUndefined();
    expect(previousTop(tops, 1200)).toBe(400);
    expect(previousTop(tops, 400)).toBe(0);
  });

  it('keeps a place among paragraphs, whatever their height', () => {
    const tops = [0, 100, 100, 500];
    for (const at of [0, 40, 100, 320, 500]) expect(topOf(tops, placeAt(tops, at))).toBeCloseTo(at, 9);
    expect(topOf([0, 200, 200, 1000], placeAt(tops, 300))).toBe(600);
    expect(placeAt([], 50)).toBe(0);
    expect(topOf([], 3)).toBe(0);
  });

  it('tells what is left, and keeps the pace within what it can do', () => {
    expect(leftText(300, 0.5, 150)).toBe('1:00 left');
    expect(leftText(426, 0, 145)).toBe('2:56 left');
    expect(leftText(300, 1, 150)).toBe('0:00 left');
    expect([within(10), within(150), within(1000)]).toEqual([40, 150, 400]);
  });
});
