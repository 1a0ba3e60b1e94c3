import { describe, expect, test } from 'vitest';
import { draw } from '../../../src/plots/draw.ts';
import { dashOf, inkOf, MOST_STYLES, shapeOf } from '../../../src/plots/drawing/palette.ts';
import { channelStyle, runStyles, stylesOf } from '../../../src/plots/drawing/styles.ts';
import type { PlotRequest } from '../../../src/register/requests.ts';
import { request, subject } from '../subjects.ts';

const asked = (...slots: readonly number[]): Pick<PlotRequest, 'runs'> => ({
  runs: slots.map((slot) => ({ alias: `r${slot}`, run: `r${slot}`, slot })),
});

/** Kinds that draw runs. */
const KINDS = ['trace', 'step-response', 'power-by-phase'] as const;

describe('plots/drawing/styles', () => {
  test('follow the places of aliases in the note, whatever the order of the request', () => {
    expect(stylesOf(asked(0, 1, 2))).toEqual([0, 1, 2]);
    expect(stylesOf(asked(3, 1))).toEqual([3, 1]);
  });

  test('begin anew with the seventh run; runs that would look alike follow the order of the request', () => {
    expect(stylesOf(asked(7, 0))).toEqual([1, 0]);
    expect(stylesOf(asked(7, 1))).toEqual([0, 1]);
    expect(stylesOf(asked(6, 1, 0))).toEqual([0, 1, 2]);
  });

  test('runs of a comparison may be twice as many: a colour comes again with another dash and another marker', () => {
    const slots = Array.from({ length: MOST_STYLES }, (_, slot) => ({ slot }));
    const looks = runStyles(slots).map((k) => ({ ink: inkOf(k), dash: String(dashOf(k)), shape: shapeOf(k) }));
    expect(new Set(looks.map(({ ink, dash }) => `${ink} ${dash}`)).size).toBe(MOST_STYLES);
    expect(new Set(looks.map(({ ink, shape }) => `${ink} ${shape}`)).size).toBe(MOST_STYLES);
    expect(runStyles([{ slot: 13 }, { slot: 2 }])).toEqual([1, 2]);
    expect(runStyles([{ slot: 13 }, { slot: 1 }])).toEqual([0, 1]);
  });

  test('channels of one run in one panel differ, the first wears the run’s own', () => {
    const styles = Array.from({ length: 6 }, (_, index) => channelStyle(4, index));
    expect(styles[0]).toBe(4);
    expect(new Set(styles).size).toBe(6);
  });

  test.each(KINDS)('a run of a note has one colour in every %s', async (kind) => {
    const quick = subject('quick', { rise: 50 });
    const brisk = subject('brisk', { rise: 45, load: 2100 });
    const slots: Readonly<Record<string, number>> = { brisk: 1, quick: 3 };
    for (const subjects of [[brisk, quick], [quick, brisk], [quick]]) {
      const runs = subjects.map(({ alias }) => ({ alias, run: alias, slot: slots[alias]! }));
      const { wide, narrow, problems } = await draw(request(kind, subjects, [], { runs }), subjects, 'p');
      expect(problems).toEqual([]);
      for (const svg of [wide, narrow]) {
        expect(svg).toMatch(/fill="var\(--plot-4\)"[^>]*>quick[,<]/);
        if (subjects.includes(brisk)) expect(svg).toMatch(/fill="var\(--plot-2\)"[^>]*>brisk[,<]/);
        expect(svg).not.toMatch(/var\(--plot-[1356]\)/);
      }
    }
  });
});
