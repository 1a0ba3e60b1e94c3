import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { withAccent } from '../../src/print/accent.ts';

const palette = readFileSync(new URL('../../src/styles/palette.css', import.meta.url), 'utf8');

test('print/accent: the palette keeps its own colours of links where the author names none', () => {
  expect(withAccent(palette, {})).toBe(palette);
});

test('print/accent: the first colour is for light paper, the second for dark', () => {
  const [light, dark] = withAccent(palette, { light: '#14506E', dark: '#93c7e6' }).split('prefers-color-scheme: dark');
  expect(light).toContain('--link: #14506e;');
  expect(dark).toContain('--link: #93c7e6;');
  expect(withAccent(palette, { dark: '#93c7e6' })).toContain('--link: #1d4f7c;');
});

test('print/accent: a palette without both is no palette', () => {
  expect(() => withAccent(':root {}', {})).toThrow('states --link 0 times, expected 2');
});
