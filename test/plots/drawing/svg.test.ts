import { describe, expect, test } from 'vitest';
import { LIGHT } from '../../../src/plots/drawing/palette.ts';
import { escaped, inline, standalone } from '../../../src/plots/drawing/svg.ts';

const VEGA =
  '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" version="1.1" class="marks" width="720" height="300" viewBox="0 0 720 300">' +
  '<g fill="none" transform="translate(19.123,40)"><g class="mark-group" role="graphics-object" aria-roledescription="group">' +
  '<path class="background" aria-hidden="true" d="M0,0h655v300h-655Z"/><g clip-path="url(#clip1)">' +
  '<path d="M0.123456,1.5L-1.98,1e-7" stroke="var(--plot-1)" stroke-width="1"/>' +
  '<text transform="translate(1,2)" font-family="\'Source Sans 3\', sans-serif" opacity="1">1.23456 GHz</text></g></g></g>' +
  '<defs><clipPath id="clip1"><rect x="0" y="0" width="9" height="9"/></clipPath></defs></svg>';

describe('plots/drawing/svg', () => {
  test('inlined, it is one small labelled image whose ids no other plot has', () => {
    expect(inline(VEGA, 'trace-wide', 'Peak < 80 & "more"')).toMatchInlineSnapshot(
      `"<svg role="img" aria-label="Peak &#60; 80 &#38; &#34;more&#34;" font-family="'Source Sans 3', sans-serif" xmlns="http://www.w3.org/2000/svg" width="720" height="300" viewBox="0 0 720 300"><g fill="none" transform="translate(19.1,40)"><g><g clip-path="url(#trace-wide-clip1)"><path d="M0.1,1.5L-2,1e-7" stroke="var(--plot-1)"/><text transform="translate(1,2)">1.23456 GHz</text></g></g></g><defs><clipPath id="trace-wide-clip1"><rect x="0" y="0" width="9" height="9"/></clipPath></defs></svg>"`,
    );
  });

  test('words inside the drawing are left alone', () => {
    expect(inline(VEGA, 'p', 't')).toContain('>1.23456 GHz<');
  });

  test('text is escaped', () => {
    expect(escaped('a<b & "c">')).toBe('a&#60;b &#38; &#34;c&#34;&#62;');
  });

  test('standing alone it has paper, title, method and no variable', () => {
    const alone = standalone(inline(VEGA, 'p', 't'), { title: 'Rise & fall', method: 'Drawn from 3 readings.' }, LIGHT);
    expect(alone).not.toMatch(/var\(/);
    expect(alone).toContain(`stroke="${LIGHT.runs[0]}"`);
    expect(alone).toContain('>Rise &#38; fall<');
    expect(alone).toContain('>Drawn from 3 readings.<');
    expect(alone.match(/<svg/g)).toHaveLength(1);
    expect(alone.match(/<g[ >]/g)!.length).toBe(alone.match(/<\/g>/g)!.length);
    expect(alone).toMatch(/^<svg xmlns="[^"]+" width="760" height="\d+" viewBox="0 0 760 \d+"/);
  });

  test('a long title is broken into lines and makes the picture higher', () => {
    const heightOf = (title: string) =>
      Number(/height="(\d+)"/.exec(standalone(inline(VEGA, 'p', 't'), { title, method: 'm' }, LIGHT))![1]);
    expect(heightOf('word '.repeat(60))).toBeGreaterThan(heightOf('word'));
  });

  test('an SVG without a size is refused', () => {
    expect(() => standalone('<svg></svg>', { title: 't', method: 'm' }, LIGHT)).toThrow('without a size');
  });
});
