import { describe, expect, test } from 'vitest';
import { planDeltas } from '../../../src/plots/deltas/plan.ts';
import type { StillDrawing } from '../../../src/plots/drawing/drawn.ts';
import { ownerOf } from '../../../src/plots/drawing/palette.ts';
import { isPlan, type Plan } from '../../../src/plots/drawing/plan.ts';
import { planScaling } from '../../../src/plots/scaling/plan.ts';
import { planScores } from '../../../src/plots/scores/plan.ts';
import { plan } from '../../../src/plots/specify.ts';
import { stepsOf } from '../../../src/plots/stills/build-up.ts';
import { compose } from '../../../src/plots/stills/compose.ts';
import { drawStills } from '../../../src/plots/stills/draw-stills.ts';
import { roomBelow, STILL } from '../../../src/plots/stills/format.ts';
import { LOOKS } from '../../../src/plots/stills/looks.ts';
import { tableDrawings } from '../../../src/plots/stills/table-body.ts';
import type { PlotKind } from '../../../src/register/requests.ts';
import { comparison, spent, steps as stepped } from '../comparisons.ts';
import { request, subject } from '../subjects.ts';
import { differing, type Pixels, pixelsOf } from './pixels.ts';

const runs = [subject('rated', { rise: 40 }), subject('quick', { rise: 46 }), subject('fast', { rise: 55, load: 2100 })];
const scaled = stepped({ rated: [1, 1], quick: [1.2, 1.15], fast: [1.3, 1.2], faster: [1.4, 1.24] });
const spending = comparison({ rated: { more: spent(6, 40) }, quick: { more: spent(7, 46) }, fast: { more: spent(9, null) } });
const asked = (kind: Parameters<typeof request>[0], channels: readonly string[] = [], more = {}) =>
  plan(request(kind, runs, channels, more), runs);

/** Shown whole: thermal images stand in places of their own, which would be empty before them; stability draws settings that were tried, and no runs. */
type Whole = 'thermal' | 'stability';

/** Every other kind; one that is left out does not compile. */
const PLANS: Readonly<Record<Exclude<PlotKind, Whole>, () => unknown>> = {
  trace: () => asked('trace', ['soc', 'core_clock', 'flag']),
  'step-response': () => asked('step-response'),
  'power-by-phase': () => asked('power-by-phase'),
  against: () => asked('against', [], { of: ['steady_temperature', 'load_power'] }),
  scaling: () => planScaling(scaled),
  scores: () => planScores(scaled),
  deltas: () => planDeltas(spending),
};
const TABLE = {
  caption: 'What each costs',
  head: ['', 'rated', 'quick', 'fast'],
  rows: [
    ['load power', '6.4 W', '7.3 W', '9.3 W'],
    ['steady temperature', '59.5 °C', '65.0 °C', 'absent'],
  ],
};

/** The drawings of a plan, which must be one. */
async function drawings(name: string): Promise<StillDrawing[]> {
  const planned = PLANS[name as keyof typeof PLANS]() as Plan;
  expect(isPlan(planned), JSON.stringify(planned)).toBe(true);
  const { stills, warnings } = await drawStills(planned);
  expect(warnings).toEqual([]);
  return stills;
}

/** Marks of one run, each by itself. */
const MARK = /<(?:path|line|rect)\b[^>]*\/>|<text\b[^>]*>(?:[^<]|<\/?tspan\b[^>]*>)*<\/text>/g;
const FOOT = { of: 'Larch 2, 2026-03-22', address: 'bench.example/notes/x/' };
const WIDTH = 480;

/** Whether a pixel is drawn on, or has a neighbour that is: letters have a wider edge on paper than without. */
function near({ width, rgba }: Pixels): (index: number) => boolean {
  const drawn = (i: number) => (rgba[4 * i + 3] ?? 0) > 0;
  return (i) => [-width - 1, -width, -width + 1, -1, 0, 1, width - 1, width, width + 1].some((by) => drawn(i + by));
}

/** Each step differs from the one before only where the marks of its own run stand. */
function addsOnly({ title, svg, shown }: StillDrawing): void {
  const steps = stepsOf(svg, shown, 'axes');
  expect(steps.map(({ name }) => name)).toEqual(['axes', ...shown.map(({ name }) => name)]);
  expect(steps.at(-1)!.svg).toBe(svg);
  for (const look of [LOOKS[0]!, LOOKS[2]!]) {
    const picture = (body: string) => pixelsOf(compose({ title, body, foot: FOOT }, STILL, look), WIDTH);
    for (const [at, { k }] of shown.entries()) {
      const [before, after] = [picture(steps[at]!.svg), picture(steps[at + 1]!.svg)];
      const own = svg.replace(MARK, (mark) => (ownerOf(mark) === k ? mark : ''));
      const covered = near(pixelsOf(compose({ title, body: own, foot: FOOT }, STILL, LOOKS[2]!), WIDTH));
      expect(differing(before, after), `${title}: nothing comes with ${shown[at]!.name}`).toBeGreaterThan(20);
      const elsewhere = differing(before, after, (i) => !covered(i));
      expect(elsewhere, `${title}, ${shown[at]!.name}, ${look.name}`).toBe(0);
    }
  }
}

describe('plots/stills/build-up', () => {
  test.each(Object.keys(PLANS))('%s: each picture differs from the one before only by the marks of its run', async (name) => {
    for (const drawing of await drawings(name)) addsOnly(drawing);
  });

  test('a table: column by column', () => {
    for (const drawing of tableDrawings(TABLE, roomBelow(TABLE.caption))) addsOnly(drawing);
  });

  test('the first picture has the axes and no word of any run', async () => {
    for (const { svg, shown } of await drawings('deltas')) {
      const [axes] = stepsOf(svg, shown, 'axes');
      expect(axes!.svg).toContain('Difference in');
      for (const { name } of shown) expect(axes!.svg).not.toContain(`>${name}<`);
      expect(axes!.svg).not.toMatch(/told apart|absent|[−+]\d/);
    }
  });

  test('runs beyond the colours, which come again, come one by one', async () => {
    const many = stepped(Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`r${i}`, [1 + i / 20, 1 + i / 30] as const])));
    const planned = planScaling(many) as Plan;
    const { stills } = await drawStills(planned);
    const { svg, shown } = stills[0]!;
    expect(shown).toHaveLength(9);
    const names = stepsOf(svg, shown, 'axes').map((step) => shown.filter(({ name }) => step.svg.includes(`>${name}<`)).length);
    expect(names).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  test('one run alone is one picture', async () => {
    const alone = plan(request('trace', [runs[0]!], ['soc']), [runs[0]!]) as Plan;
    const { stills } = await drawStills(alone);
    expect(stepsOf(stills[0]!.svg, stills[0]!.shown, 'axes')).toEqual([{ name: '', svg: stills[0]!.svg }]);
  });
});
