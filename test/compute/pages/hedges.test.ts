import { describe, expect, test } from 'vitest';
import { HEDGES_CHAPTER } from '../../../src/compute/pages/hedges.ts';
import { CHAPTERS } from '../../../src/compute/pages/method-chapters.ts';
import { renderProse } from '../../../src/words/prose.ts';
import { HEDGES } from '../../../src/words/stated/hedges.ts';
import { READINGS } from '../../../src/words/stated/readings.ts';

const { html, problems } = renderProse(HEDGES_CHAPTER.markdown, { file: 'hedges.ts', line: 1 });

describe('compute/pages/hedges', () => {
  test('it is a chapter of the method page, and renders without a problem', () => {
    expect(CHAPTERS).toContain(HEDGES_CHAPTER);
    expect(problems).toEqual([]);
  });

  test('every hedge and every reading has its item, with the interval that is read', () => {
    const items = html.match(/<li>/g) ?? [];
    expect(items).toHaveLength(HEDGES.length + READINGS.length);
    for (const { name } of [...HEDGES, ...READINGS]) expect(html).toContain(`<li><strong>${name}</strong>: `);
    expect(html).toContain('Also said: almost, not quite, approaching, getting on for.');
    expect(html).toContain('“58 degrees”: 57.5\u00a0°C to below 58.5\u00a0°C');
    expect(html).toContain('“about 60 degrees”: 57.5\u00a0°C to 62.5\u00a0°C');
    expect(html).toContain('“under 60 degrees”: less than 60\u00a0°C');
    expect(html).toContain('“30 percent less”: above 0.695 to 0.705');
    expect(html).toContain('“a third”: 0.25 to below 0.416667');
  });
});
