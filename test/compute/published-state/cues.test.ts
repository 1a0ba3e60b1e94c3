import { describe, expect, test } from 'vitest';
import { newStills, shownCues, stillLines } from '../../../src/compute/published-state/cues.ts';
import type { PlotResult } from '../../../src/compute/steps/plots/plot-task.ts';
import { planned } from '../../words/script/script-of.ts';

/** What is looked at of a plot. */
function drawn(id: string): PlotResult {
  return { id, title: `Title of ${id}` } as unknown as PlotResult;
}

const TEXT = `:::cue{at="0:05"}
A trace.

::plot{kind=trace runs="rated"}
:::

Words.

:::cue{at="1:05" shows="scaling trace-rated"}
The scores.
:::

Words.

:::cue
The lid.
:::
`;
const CUES = shownCues(
  planned(TEXT),
  { of: 'scripts/larch', plots: [drawn('trace-rated')] },
  { of: 'notes/larch', plots: [null, drawn('scaling-steps')] },
);

describe('compute/published-state/cues', () => {
  test('each cue has its time, its place and the plots that it shows, its own and those of the note', () => {
    expect(CUES.map(({ at, line, plots }) => [at, line, plots.map(({ of, id }) => `${of} ${id}`)])).toEqual([
      ['0:05', 1, ['scripts/larch trace-rated']],
      ['1:05', 9, ['scripts/larch trace-rated', 'notes/larch scaling-steps']],
    ]);
  });

  test('a plot that is drawn otherwise asks for a still at each cue that shows it, and another note does not', () => {
    const lines = (redrawn: [string, string][]) =>
      stillLines('content/scripts/larch.md', newStills(CUES, new Map(redrawn.map(([of, id]) => [of, new Set([id])]))));
    expect(lines([['notes/larch', 'scaling-steps']])).toEqual(['content/scripts/larch.md:9:1: at 1:05, “Title of scaling-steps”']);
    expect(lines([['scripts/larch', 'trace-rated']])).toHaveLength(2);
    expect(lines([['notes/larch', 'trace-rated']])).toEqual([]);
    expect(lines([])).toEqual([]);
  });
});
