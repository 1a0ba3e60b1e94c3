import { describe, expect, test } from 'vitest';
import { render, type Spec } from '../../../src/plots/drawing/vega.ts';

const bars = (field: string, more: Spec = {}): Spec => ({
  data: { values: [{ a: 1 }, { a: 3 }] },
  mark: 'point',
  encoding: { x: { field, type: 'quantitative' } },
  ...more,
});
/** A clip makes Vega define an id from its counter. */
const clipped: Spec = { ...bars('a'), mark: { type: 'point', clip: true } };

describe('plots/drawing/vega', () => {
  test('renders a specification to SVG without warnings', async () => {
    const { svg, warnings } = await render(bars('a'));
    expect(svg).toMatch(/^<svg .*<\/svg>$/s);
    expect(warnings).toEqual([]);
  });

  test('a field that the data lack is warned of, not drawn in silence', async () => {
    const { warnings } = await render(bars('absent'));
    expect(warnings.join()).toMatch(/Infinite extent for field "absent"/);
  });

  test('drawings at once and drawings in turn give the same bytes', async () => {
    const inTurn = [(await render(clipped)).svg, (await render(bars('a'))).svg, (await render(clipped)).svg];
    const atOnce = await Promise.all([render(clipped), render(bars('a')), render(clipped)]);
    expect(inTurn[0]).toContain('id="clip1"');
    expect(atOnce.map(({ svg }) => svg)).toEqual(inTurn);
    expect(inTurn[2]).toBe(inTurn[0]);
  });

  test('a specification that cannot be compiled rejects, and the next one is drawn', async () => {
    await expect(render({ mark: 'point', encoding: { x: { field: 'a' } }, data: { values: [] }, layer: 'no' })).rejects.toThrow();
    expect((await render(bars('a'))).warnings).toEqual([]);
  });

  test('nothing is loaded, neither from disk nor from a network', async () => {
    const { warnings } = await render(bars('a', { data: { url: 'package.json' } }));
    expect(warnings.join()).toMatch(/may load nothing.*package\.json/);
  });

  test('text is measured in our face: margins are as wide as the labels', async () => {
    const { svg } = await render({ ...bars('a'), title: { text: '0'.repeat(400), fontSize: 10, anchor: 'start', frame: 'group' } });
    const [, width] = /width="([\d.]+)"/.exec(svg)!;
    // 400 figures of 0.497 em at 10 px are 1988 px.
    expect(Number(width)).toBeGreaterThan(1985);
    expect(Number(width)).toBeLessThan(2010);
  });
});
