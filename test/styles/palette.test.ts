import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DARK, LIGHT, variables } from '../../src/plots/drawing/palette.ts';

const css = readFileSync(new URL('../../src/styles/palette.css', import.meta.url), 'utf8');
const [light, dark] = css.split('@media screen and (prefers-color-scheme: dark)') as [string, string];

describe('src/styles/palette.css', () => {
  it.each([
    ['light', light, LIGHT],
    ['dark', dark, DARK],
  ])('has the %s values of src/plots/drawing/palette.ts', (_name, sheet, palette) => {
    for (const [name, value] of variables(palette)) expect(sheet).toContain(`${name}: ${value};`);
  });

  it('gives the page the paper that the plots were chosen for', () => {
    expect(light).toContain(`--paper: ${LIGHT.paper};`);
    expect(dark).toContain(`--paper: ${DARK.paper};`);
  });
});
