import { expect, it } from 'vitest';
import { noteSkeleton } from '../../../src/commands/new/note-skeleton.ts';
import { MOST_STYLES } from '../../../src/plots/drawing/palette.ts';

it('shows the course of as many runs as one plot can tell apart, and names them all', () => {
  const runs = Array.from({ length: MOST_STYLES + 1 }, (_, at) => `soak-${at}`);
  const text = noteSkeleton(runs, undefined);
  expect(text.match(/^ {2}soak_\d+: /gm)).toHaveLength(runs.length);
  expect(/runs="([^"]*)"/.exec(text)?.[1]?.split(' ')).toHaveLength(MOST_STYLES);
});
